import { ClientObject } from "./client-object";
import type { Context } from "./context";
import type { DocumentProperties } from "./sheet-extras";
import type { StandsFor } from "./standing";

type Members = keyof DocumentProperties;

/** Stands in for Excel.DocumentProperties; kept with the workbook's extras. */
export class DocumentPropertiesObject extends ClientObject<true, Context> implements StandsFor<Excel.DocumentProperties, Members> {
  get title(): string { return this.get("title"); }
  set title(text: string) { this.change("title", text); }
  get author(): string { return this.get("author"); }
  set author(text: string) { this.change("author", text); }
  get subject(): string { return this.get("subject"); }
  set subject(text: string) { this.change("subject", text); }
  get comments(): string { return this.get("comments"); }
  set comments(text: string) { this.change("comments", text); }

  protected readers() {
    const read = (property: Members) => () => this.context.host.extras.of(this.context.host.unitId).properties?.[property] ?? "";
    return { title: read("title"), author: read("author"), subject: read("subject"), comments: read("comments") };
  }

  private change(property: Members, text: string): void {
    this.set(property, text, () => {
      const extras = this.context.host.extras.of(this.context.host.unitId);
      extras.properties = { ...extras.properties, [property]: text };
    });
  }
}
