import { ClientObject } from "./client-object";
import type { Context } from "./context";
import type { DocumentProperties } from "./sheet-extras";
import type { StandsFor } from "./standing";

const members = [
  "title",
  "author",
  "subject",
  "comments",
  "keywords",
  "category",
  "company",
  "manager",
] as const satisfies (keyof DocumentProperties)[];
type Members = (typeof members)[number];

/** Stands in for Excel.DocumentProperties; kept with the workbook's extras. */
export class DocumentPropertiesObject extends ClientObject<true, Context> implements StandsFor<Excel.DocumentProperties, Members> {
  get title(): string {
    return this.get("title");
  }
  set title(text: string) {
    this.change("title", text);
  }
  get author(): string {
    return this.get("author");
  }
  set author(text: string) {
    this.change("author", text);
  }
  get subject(): string {
    return this.get("subject");
  }
  set subject(text: string) {
    this.change("subject", text);
  }
  get comments(): string {
    return this.get("comments");
  }
  set comments(text: string) {
    this.change("comments", text);
  }

  get keywords(): string {
    return this.get("keywords");
  }
  set keywords(text: string) {
    this.change("keywords", text);
  }
  get category(): string {
    return this.get("category");
  }
  set category(text: string) {
    this.change("category", text);
  }
  get company(): string {
    return this.get("company");
  }
  set company(text: string) {
    this.change("company", text);
  }
  get manager(): string {
    return this.get("manager");
  }
  set manager(text: string) {
    this.change("manager", text);
  }

  protected readers() {
    const read = (property: Members) => () => this.context.host.extras.of(this.context.host.unitId).properties?.[property] ?? "";
    return Object.fromEntries(members.map((member) => [member, read(member)])) as Record<Members, () => string>;
  }

  private change(property: Members, text: string): void {
    this.set(property, text, () => {
      const extras = this.context.host.extras.of(this.context.host.unitId);
      extras.properties = { ...extras.properties, [property]: text };
    });
  }
}
