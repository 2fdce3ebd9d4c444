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
export class DocumentPropertiesObject
  extends ClientObject<true, Context>
  implements StandsFor<Excel.DocumentProperties, keyof DocumentPropertiesObject>
{
  declare title: string;
  declare author: string;
  declare subject: string;
  declare comments: string;
  declare keywords: string;
  declare category: string;
  declare company: string;
  declare manager: string;

  protected override changes() {
    return Object.fromEntries(members.map((member) => [member, (text: string) => this.change(member, text)]));
  }

  protected override readers() {
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
