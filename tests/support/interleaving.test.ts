import { afterEach, expect, it, vi } from "vitest";
import { crossingOrders, everyOrder, interleaved, type Writer } from "./interleaving";

afterEach(() => vi.unstubAllGlobals());

/** A host that only notes whose round trip it was. */
function noteTrips(): string[] {
  const trips: string[] = [];
  vi.stubGlobal("Excel", {
    run: async (batch: Writer) => {
      const context = {
        name: "",
        sync: async () => {
          trips.push(context.name);
        },
      };
      await batch(context as never);
    },
  });
  return trips;
}

const writer =
  (name: string, trips: number): Writer =>
  async (context) => {
    Object.assign(context, { name });
    for (let trip = 0; trip < trips; trip++) await context.sync();
  };

it("every order of two and two is there once", () => {
  expect(everyOrder(2, 2).map((order) => order.join(""))).toEqual(["0011", "0101", "0110", "1001", "1010", "1100"]);
  expect(everyOrder(3, 3)).toHaveLength(20);
});

it("crossing orders put all of one between any two of the other", () => {
  expect(crossingOrders(3, 1).map((order) => order.join(""))).toEqual(["0100", "0010", "010101", "101010"]);
  expect(crossingOrders(2, 2).map((order) => order.join(""))).toEqual(["0110", "1001", "0101", "1010"]);
});

it.each(everyOrder(2, 3))("round trips come in the order asked for: %i%i%i%i%i", async (...order) => {
  const trips = noteTrips();
  const endings = await interleaved([writer("a", 2), writer("b", 3)], order as (0 | 1)[]);
  expect(endings).toEqual([{ ended: "done" }, { ended: "done" }]);
  expect(trips.join("")).toBe(order.map((who) => "ab"[who as number]).join(""));
});

it("a writer that gives up or needs fewer trips lets its turns pass", async () => {
  const trips = noteTrips();
  const angry: Writer = async (context) => {
    Object.assign(context, { name: "a" });
    await context.sync();
    throw new Error("no");
  };
  expect(await interleaved([angry, writer("b", 2)], [0, 0, 0, 1])).toMatchObject([
    { ended: "refused", problem: { message: "no" } },
    { ended: "done" },
  ]);
  expect(trips.join("")).toBe("abb");
});
