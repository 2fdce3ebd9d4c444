import { ClientObject } from "./client-object";
import type { Context } from "./context";
import type { StandsFor } from "./standing";

/** Base of what tells the locale of the person's Excel. */
abstract class LocalePart extends ClientObject<true, Context> {
  constructor(context: Context) {
    super(context, { name: "cultureInfo", missing: "throws", find: () => true });
  }

  protected get locale() {
    return this.context.host.locale;
  }
}

/** Stands in for Excel.CultureInfo. */
export class CultureInfo extends LocalePart implements StandsFor<Excel.CultureInfo, "name" | "numberFormat" | "datetimeFormat"> {
  readonly numberFormat = new NumberFormatInfo(this.context);
  readonly datetimeFormat = new DatetimeFormatInfo(this.context);

  declare readonly name: string;

  protected override children() {
    return { numberFormat: () => this.numberFormat, datetimeFormat: () => this.datetimeFormat };
  }
  protected readers() {
    return { name: () => this.locale.name };
  }
}

/** Stands in for Excel.NumberFormatInfo. */
export class NumberFormatInfo
  extends LocalePart
  implements StandsFor<Excel.NumberFormatInfo, "numberDecimalSeparator" | "numberGroupSeparator">
{
  declare readonly numberDecimalSeparator: string;
  declare readonly numberGroupSeparator: string;

  protected readers() {
    return { numberDecimalSeparator: () => this.locale.decimal, numberGroupSeparator: () => this.locale.group };
  }
}

/** Stands in for Excel.DatetimeFormatInfo. */
export class DatetimeFormatInfo extends LocalePart implements StandsFor<Excel.DatetimeFormatInfo, "shortDatePattern" | "dateSeparator"> {
  declare readonly shortDatePattern: string;
  declare readonly dateSeparator: string;

  protected readers() {
    return { shortDatePattern: () => this.locale.shortDate, dateSeparator: () => this.locale.dateSeparator };
  }
}
