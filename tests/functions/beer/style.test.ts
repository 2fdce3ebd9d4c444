import { describe, expect, it } from "vitest";
import { callScalar } from "../../../src/functions/call";
import { beerStyle } from "../../../src/functions/beer/style";

describe("BEER.STYLE of a style that it does not know", () => {
  it("names the styles that are meant perhaps", () => {
    expect(callScalar(beerStyle, ["irish"])).toMatchObject({
      code: "#VALUE!",
      message: expect.stringContaining("did you mean 15A Irish Red Ale, 15B Irish Stout, 15C Irish Extra Stout?") as string,
    });
  });

  it("says that some styles have no figures", () => {
    expect(callScalar(beerStyle, ["28A"])).toMatchObject({
      code: "#VALUE!",
      message: expect.stringContaining("have no figures") as string,
    });
  });
});
