/**
 * Concentrate to add to a volume of water, mL.
 *
 * @param volumeL water in the bucket, above 0
 * @param doseMlPerL what the label asks for, above 0
 */
export function concentrateMl(volumeL: number, doseMlPerL: number): number {
  return volumeL * doseMlPerL;
}
