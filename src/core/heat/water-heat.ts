/**
 * Heat that warms one (cold) litre of water by 1 K, kJ: the enthalpy of water rises by 335.3 kJ/kg from 20 to 100 °C
 * (steam tables: 419.2 - 83.9), times 0.9982 kg/L, over 80 K. Wort needs up to 3 % less for each litre (3900 J/(kg K)
 * at 12 °P), which is left out: it is within what a thermometer and a burner's rating are good for.
 */
export const heatKjPerLitreKelvin = 4.18;
