/**
 * Marks of every word and formula that the plans 1 and 2 ever put into a batch sheet, in any of their revisions: made once
 * from the project's history by planning all forms of the sheet with each revision of `src/workbook/batch`, and closed.
 * A plan that replaces plan 3 adds plan 3's here before it changes them.
 */
export const formerMarks = `
00691 05i6w 06diw 0c5xb 0c6v6 0fhy5 0k2w3 0maid 0mhsc 0ovvd 0s9i2 0sotc 0x102 0z07u 183ss 18u66 1a8iy 1bb08 1c8bx 1cjzs 1h4ms
1oxen 1rjo9 1ww6g 1zsjg 222my 28uvo 29k9t 2a49n 2aamp 2aive 2ajpv 2b2zw 2bcgo 2hv3t 2jc2q 2k1rq 2ky21 2kyvb 2mo39 2ned1 2pzju
2vyz0 2xdf8 2zw7i 32tgf 35f4h 35w1b 3ag62 3eeyd 3hdul 3orh2 3rzcm 3urci 3xpu5 45a8v 45ak7 494br 4iqpi 4rqgl 4tu5j 4v9nd 4wa80
4yche 53aa9 54a9z 54ekw 5863h 5c5vd 5dedj 5fkth 5fpb6 5hjsy 5lq5v 5q133 5r1s1 63v7y 65h85 66twm 670fd 67dtq 6ithy 6je4m 6nb0v
6r4gi 6rpxt 6rxet 6vgnx 6vmad 708z3 730fe 730jk 77fo1 7814h 79zr1 7akr7 7al66 7bypv 7igsy 7k5kf 7m31e 7mkjr 7nf8h 7o8gm 7ovly
7qb0j 7tq3l 7vpn2 7w41h 7xdsp 7yj5n 7zkyz 80v0j 82j2k 843fm 852qx 8acvu 8ahnn 8emlm 8eoxq 8evb9 8hekv 8ibns 8l7ot 8qann 8sbk0
8u972 8ymdi 8ysza 91fxv 92f05 952hm 95pi9 95r1m 96i2y 97pgp 992y9 99nzp 99rx2 9ghae 9krvz 9m5zt 9oujl 9qzsz 9ryjb 9s3ap 9t5ho
9u05l 9vgsj 9xyfl a2ugz a39rx a4pfd a8ags abovp ad7ea adhb0 aipis aj8al aja55 ajpig atx36 b4nx1 b7ocb b9kp9 barkr bfr47 bft3l
bhxmr bi2vb bkowa brnz4 bsf9q bsfw6 bsz8m bt295 bylcr c2dis c6pms cg1im cjhw5 cm8d9 cndpd crjtc ctiqr cwttw czsf6 d0ehf d2cz4
d30b6 d7dno d9i2w dh4kz dh7hs dj1sw dmxud dqwjj drb8j drnek duwzc dyip0 dz71k dzquq e0gcw e3hd9 e4omc e5uw5 ebfip ecdtl ecj0h
edfxy edk6k efbnr eg7lr ehcj1 ehfxo ehmgc el6o6 etl96 eud3i ewvei eywcf f0yuf f1738 f2n96 f76ga fbvks fe2av fifdm fnf8t fnytg
fo1t2 fo7c9 fpjvp frahn fuitz fx6nz fybz3 fzg2h g1q27 g3feq g5fhw g661v g8cuv g9lvp gcq2z ge5l0 gftbt ggcq6 gx19m gxnpa gym3l
h0dxi habue hbjh0 hds27 heest herfj hguot hnp8q hoqon hquy7 hrd5c hs1uw hwevb hxoo2 i0l6t i2mp4 i2mu3 i3ee6 i3pkt icvnx iqb4e
it4us ivfql ix04l ix5ab ix7gd j4nl1 j5hm8 j7f4w jd5yk jeh4a jen1p jg9tl jhtip jjac7 jpqh8 jrm6f jtpme jzr0q k17az k20f8 k4ya1
k58d6 kb9rh kgwwp kiedq kjrct kkhon koe2t ks07g kvcry kvm9h kvva5 kz8hp l4lri l5nax l7h1l l7hxp l8uvf lhy2i ljo53 lkh4z lna3t
lorgn lp5qj lv2wz m08nd m279e m3l1a m7m19 ma647 mg84v mh2s0 mmv68 moq19 n1oe4 n7cw5 nczpi nddzi nidkz njoyf nklev nomai np0lm
np4dd npptm nwmeq nzp9t o07sl o0uj3 o7yr8 obpxx oe338 ofk6o ofwza omvt2 oqfdp or82d orjvj ot6vf oteef ozydi p10k8 p261u p5dne
p5sxr p6pa3 pa6ap papbj pbpcb pcads pesto pfvg8 pg3gl phxb1 piv0d poiyu pou59 powne pqea7 q37cb q8sjx q8xlp qbp8r qcgxd qctg7
qlpzf qmcae qmym5 qpcsx qqwy4 qs8u0 qtmw9 qu51p qwk8f qyhzu r247d r50o4 r53kb r5oge rb6qt rd08r rfa6f rfrcz rfxzn rikdm riprl
rlk4s ro3c6 rqo99 rrvfj rtfa7 rtoel rxihx ry46o rz6mf s2mvt s78h7 sh532 sh7u5 somr0 t5o8f t74pe tahbi tckrc tn9kf tot2d trjn8
tsgla tsmni tt0rn ttztk tuk73 twics ty0or u6cpb u7ek7 u84vy u95ob u96tq ubugs udaj7 unfat ur0qj urxb7 us6kp usfsp vc4bk vcmpc
vdbxw vexie vi9ns vjgd6 vovtb vp69j vsy7w vwuy0 vzqo8 w046g w4luo wbpax wddsi wde0h we6yr weo2e wepmc wfpac wgf19 wk5m7 wlqs0
wna4t wsiok wtqlt x033b x085r x0ky9 x0lfr x2rpq x339z x3xx5 x41e1 x9yak xbh0r xbmtz xbsbt xca3s xcqfg xhjlk xif10 xiog0 xmue5
xo1uj xplja xs33b xsm53 xttsq xulzc y07zy y17zr y6hpz y6z0d ya3nf ybi3y yf8wo yijmf yj0sm ylang yo2z4 yq7gh ywxga yxiys yxvx0
yy5xh yyyzq z24py z51ct z7gnz z7irf z8leg z9su6 zc6wh zf9q1 zgs9p zk3kb zl628 zs0ph zurg0
`
  .trim()
  .replaceAll("\n", " ");

/**
 * The same of formulas that plan 3 had in earlier revisions of its own: Volumes on a mash sheet, which said nothing of water to sparge
 * with that cannot be reckoned (Figures, which changed with it, was as plans 1 and 2 had it). On an extract sheet they are today's.
 */
export const formerMarksOfToday = "gp2qw rbc8g";
