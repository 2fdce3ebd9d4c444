import type { Injector } from "@univerjs/core";
import {
  IFunctionService,
  NumberValueObject,
  type ArrayValueObject,
  type BaseFunction,
  type BaseReferenceObject,
  type BaseValueObject,
  type FunctionVariantType,
} from "@univerjs/engine-formula";

/**
 * CHOOSE({1,2},A1:A3,C1:C3) puts two columns side by side, the usual way to hand a function separate columns as one
 * table. The engine sizes the answer before it looks into the ranges and returns their first row only, and takes a
 * blank cell for an error. So the ranges are turned into arrays of values first.
 */
export function repairChoose(injector: Injector): void {
  const choose = injector.get(IFunctionService).getExecutor("CHOOSE") as BaseFunction | undefined;
  if (!choose) return;
  const original = choose.calculate.bind(choose);
  choose.calculate = (index, ...choices) => {
    const picks = index;
    const single = !picks.isReferenceObject() && !picks.isArray();
    return original(index, ...(single ? choices : choices.map(filledArray)));
  };
}

function filledArray(choice: FunctionVariantType): BaseValueObject {
  const value = choice.isReferenceObject() ? (choice as BaseReferenceObject).toArrayValueObject() : (choice as BaseValueObject);
  if (!value.isArray()) return value;
  const array = value as ArrayValueObject;
  for (let row = 0; row < array.getRowCount(); row++) {
    for (let column = 0; column < array.getColumnCount(); column++) {
      if (array.get(row, column) == null) array.set(row, column, NumberValueObject.create(0));
    }
  }
  return array;
}
