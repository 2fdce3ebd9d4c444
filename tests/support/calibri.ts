/**
 * How wide Calibri draws each character, in 1/2048 of the letters' size, three digits to the base 36 each: read from the font Carlito, which is made to
 * have the very widths of Calibri (SIL Open Font Licence). Kept here so that the check needs no font on the computer that runs it.
 */
const characters =
  " !\"#$%&'()*+,-./0123456789:;<=>?@ABCDEFGHIJKLMNOPQRSTUVWXYZ[\\]^_`abcdefghijklmnopqrstuvwxyz{|}~¡¢£¤¥¦§¨©ª«¬®¯°±²³´µ¶·¸¹º»¼½¾¿ÀÁÂÃÄÅÆÇÈÉÊËÌÍÎÏÐÑÒÓÔÕÖ×ØÙÚÛÜÝÞßàáâãäåæçèéêëìíîïðñòóôõö÷øùúûüýþÿŒœŠšŽžΔ–—‘’“”•…‰⁰⁴⁵⁶⁷⁸⁹₀₁₂₃₄€→−√≈≤≥";
const packed = {
  regular:
    "0cv0ij0mt0sc0su14o12t0ck0h90h90sc0sc0e70hf0ed0lz0su0su0su0su0su0su0su0su0su0su0f80f80sc0sc0sc0qd1ev0wx0uy0uc0z00rs0q50zw0zg0ec0i50tk0nx1cn10q11o0te12a0uw0q50rq10i0wa1em0tj0rq0qn0hg0lz0hg0sc0sc0gk0r90tw0o20tw0sb0hd0qs0tw0d20dm0pv0d219g0tw0u00tw0tw0ju0m90j20tw0pp14o0on0pr0mh0hw0q70hw0sc0ij0sc0su0sc0su0sc0sc0mc1bh0mw0t50sc0su0mf0ja0sc0j40j10gm0va0xc0ed0hh0e00o10t510712712f0qd0wx0wx0wx0wx0wx0wx17f0uc0rs0rs0rs0rs0ec0ec0ec0ec0zj10q11o11o11o11o11o0sc11r10i10i10i10i0rq0te0u00r90r90r90r90r90r917z0o20sb0sb0sb0sb0d20d20d20d20tw0tw0u00u00u00u00u00sc0u40tw0tw0tw0tw0pr0tw0pr1db1cc0q50m90qn0mh0w40sc1fi0e70e70nt0nt0sc13a1n20m90kb0iu0kf0i90kh0kf0m90e00j40j10kb0su1fi0sc0sc0sc0sc0sc",
  bold: "0cv0ij0oy0sc0su15h1430da0hq0hq0sc0sc0eo0hf0f70og0su0su0su0su0su0su0su0su0su0su0fp0fp0sc0sc0sc0qd1f40yh0vw0u40zv0rr0q41090zw0f60iu0v40o21dq11h12h0ua1310w10qw0s61150xn1fk0vc0tk0r70ih0og0ih0sc0sc0h30s30uj0nt0uj0sn0i00qz0uj0dz0ej0rb0dz1aa0uj0ul0uj0uj0k80mp0jq0uj0qx16e0q50qy0mm0jk0r10jk0sc0ij0sc0su0sc0su0sc0sc0nl1bh0no0un0sc0su0m70jh0sc0j80j40h40w20y00f80h90ed0or0un11f13b13x0qd0yh0yh0yh0yh0yh0yh1840u40rr0rr0rr0rr0f60f60f60f610d11h12h12h12h12h12h0sc12q1151151151150tk0ua0vk0s30s30s30s30s30s31830nt0sn0sn0sn0sn0dz0dz0dz0dz0uj0uj0ul0ul0ul0ul0ul0sc0uy0uj0uj0uj0uj0qy0uj0qy1dq1by0qw0mp0r70mm0wv0sc1fi0eo0eo0or0or0sc14h1oe0mn0kt0j60kk0il0kt0kk0mn0ed0j80j40kt0su1fi0sc0sc0sc0sc0sc",
  italic:
    "0cv0ij0mt0sc0su14o12t0ck0h90h90sc0sc0e70hf0ed0m20su0su0su0su0su0su0su0su0su0su0f80f80sc0sc0sc0qd1ev0wx0uy0tq0z00rs0q50zw0zg0ec0i50tk0nx1cn10o1180te11s0uw0pq0rq10i0wa1en0tj0rq0qn0hg0lv0hg0sc0sc0gk0t90t90no0t90r60hd0t90t90d20dm0pv0d21900t90t70t90t90ji0m50j20t90pd14o0on0pg0mh0hw0q70hw0sc0ij0sc0su0sc0su0sc0sc0mc1bh0oi0t50sc0su0mf0ja0sc0j40j10gm0um0xc0ed0hh0e00o10t510712712f0qd0wx0wx0wx0wx0wx0wx17f0tq0rs0rs0rs0rs0ec0ec0ec0ec0zj10o1181181181181180sc11f10i10i10i10i0rq0te0u00t90t90t90t90t90t916x0no0r60r60r60r60d20d20d20d20tw0t90t70t70t70t70t70sc0u40t90t90t90t90pg0t90pg1db1ac0pq0m50qn0mh0w40sc1fi0e70e70nt0nt0sc1391n20m90kb0iu0kf0i90kh0kf0m90e00j40j10kb0su1fi0sc0sc0sc0sc0sc",
  boldItalic:
    "0cv0ij0oy0sc0su15h1430da0hq0hq0sc0sc0eo0hf0f70op0su0su0su0su0su0su0su0su0su0su0fp0fp0sc0sc0sc0qd1f40yh0vw0ti0zv0rr0q41090zw0f60iu0v40o21dq11c1210ua12j0w10qh0s61150xn1fl0vc0tk0r70ih0o60ih0sc0sc0h30u10u10nf0u10ry0i00u10u00dz0ej0rb0dz19q0u00u00u10u10k10mf0jq0u00qp16e0q50qr0mm0jk0r10jk0sc0ij0sc0su0sc0su0sc0sc0nl1bh0p30un0sc0su0m70jh0sc0j80j40h40vi0y00f80h90ed0or0un11f13b13x0qd0yh0yh0yh0yh0yh0yh1840ti0rr0rr0rr0rr0f60f60f60f610d11c1211211211211210sc12j1151151151150tk0ua0vk0u10u10u10u10u10u117g0nf0ry0ry0ry0ry0dz0dz0dz0dz0uj0u00u00u00u00u00u00sc0uy0u00u00u00u00qr0u10qr1dq1ah0qh0mf0r70mm0wv0sc1fi0eo0eo0or0or0sc14g1oe0mn0kt0j60kk0il0kt0kk0mn0ed0j80j40kt0su1fi0sc0sc0sc0sc0sc",
};

export type Face = keyof typeof packed;

const faces = Object.fromEntries(
  Object.entries(packed).map(([face, digits]) => [
    face,
    new Map([...characters].map((character, index) => [character, parseInt(digits.slice(3 * index, 3 * index + 3), 36)])),
  ]),
) as Record<Face, Map<string, number>>;

/** Pixels, at 96 an inch, that a line of words takes; a character that Calibri lacks counts as an em. */
export function calibriPixels(words: string, points: number, face: Face): number {
  let units = 0;
  for (const character of words) units += faces[face].get(character) ?? 2048;
  return (units / 2048) * points * (96 / 72);
}
