/**
 * Marks of every word and formula that the plans 1 to 3 ever put into a batch sheet, in any of their revisions: made once
 * from the project's history by planning all forms of the sheet with each revision of `src/workbook/batch`, and closed.
 * A plan that replaces plan 4 adds plan 4's here before it changes them.
 */
export const formerMarks = `
00691 017e7 01cnq 03kyy 05i6w 061xb 069to 06diw 07prl 0c5xb 0c6v6 0fhy5 0k2w3 0l9qm 0maid 0mhsc 0mwyl 0o8hs 0ovvd 0rqn6 0s9i2 0sotc
0w4pi 0x102 0z07u 0zckf 105ag 10uea 13cwn 13y5j 183ss 18efv 18u66 1a8iy 1bb08 1c8bx 1cjzs 1h4ms 1oxen 1pxdf 1rjo9 1w0fn 1ww6g 1x4go
1zsjg 222my 24g4w 28uvo 29k9t 2a49n 2aamp 2aive 2ajpv 2axsg 2b2zw 2bcgo 2g2fj 2hv3t 2jc2q 2k1rq 2ky21 2kyvb 2mo39 2ned1 2oki6 2oujf
2pzju 2qtum 2vyz0 2xdf8 2zw7i 32tgf 35f4h 35w1b 3ag62 3eeyd 3hdul 3orh2 3rzcm 3urci 3xpu5 413sv 420kg 44gt1 45a8v 45ak7 494br 4f7xp
4iqpi 4n0tl 4njg1 4p36j 4pxhx 4rqgl 4tu5j 4v9nd 4wa80 4yche 53aa9 54a9z 54ekw 55on5 5863h 5aua1 5c5vd 5dedj 5fkth 5fpb6 5g1wn 5gral
5hjsy 5lbo3 5ldcf 5lq5v 5q133 5r1s1 5zivg 62yr8 63v7y 6521j 65h85 66twm 670fd 67dtq 6aoks 6guxr 6ithy 6je4m 6kapb 6nb0v 6r4gi 6rpxt
6rxet 6vgnx 6vmad 708z3 730fe 730jk 77fo1 7814h 79zr1 7akr7 7al66 7bypv 7igsy 7k5kf 7m31e 7mkjr 7nf8h 7o8gm 7ovly 7qb0j 7tq3l 7uy3y
7vpn2 7vt82 7w0e8 7w41h 7xdsp 7yj5n 7zkyz 80v0j 82j2k 843fm 84pvz 852qx 8acvu 8ahnn 8ak9v 8emlm 8eoxq 8evb9 8hekv 8ibns 8jy1k 8l7ot
8qann 8sbk0 8u972 8wcjo 8xh05 8ymdi 8ysza 8zsf4 91fxv 92b8x 92f05 952hm 95pi9 95r1m 96i2y 97m0m 97pgp 992y9 99nzp 99rx2 9bpd2 9dh8k
9gd6b 9ghae 9hs39 9ixny 9krvz 9m5zt 9o2sa 9oujl 9qzsz 9rdw2 9ryjb 9s18l 9s3ap 9t5ho 9u05l 9vgsj 9xyfl a2ugz a39rx a4pfd a536u a8ags
abjid abovp ad7ea adhb0 aehhv aipis aj3f5 aj8al aja55 ajpig amzo0 annyc atx36 b4nx1 b5223 b7ocb b8uug b9kp9 barkr bew60 bfr47 bft3l
bhxmr bi2vb bkowa blkiz bpuv3 brnz4 bsbhh bsf9q bsfw6 bsz8m bt295 bylcr c2dis c4e0a c4i94 c6pms c90kk cbo7r certs cg1im cgono chqfs
cjhw5 cm8d9 cndpd crflt crjtc crnkz ctiqr cvu0t cvwl3 cwa5a cwttw cyypb czsf6 d0ehf d2cz4 d30b6 d520t d7dno d9i2w dh4kz dh7hs di4ir
dj1sw dkiqm dmxud dqwjj drb8j drnek duwzc dyip0 dz71k dzquq e0gcw e3hd9 e4eo5 e4omc e5uw5 ebfip ecdtl ecj0h edfxy edk6k efbnr eg7lr
ehcj1 ehfxo ehmgc el6o6 etl96 eud3i eug15 ewvei eywcf f0rut f0yuf f1738 f2n96 f3dxa f76ga fbubu fbvks fe2av fifdm fjixp fnf8t fnytg
fo1t2 fo7c9 fpjvp frahn fuitz fx6nz fybz3 fyw30 fzg2h g1q27 g3feq g5fhw g62kr g661v g6kf0 g8cuv g9lvp gcq2z ge5l0 gf930 gftbt ggcq6
gl849 gp2qw gx19m gxnpa gym3l gzwyv h0dxi h27dr h2m8q h394d habue hbjh0 hc5xr hds27 heest herfj hguot hhnv7 hkxct hnp8q hoqon hquy7
hrd5c hs1uw hwevb hxoo2 i0l6t i2mp4 i2mu3 i3ee6 i3pkt i4j8u icvnx ikajy iqb4e it4us ivfql ix04l ix5ab ix7gd iy5n5 j2seu j4nl1 j5hm8
j7f4w jd5yk jeh4a jen1p jfm4x jg9tl jhtip jjac7 jmuwv jpqh8 jrm6f jtpme jzr0q k17az k20f8 k4ya1 k58d6 kb9rh kgwwp kh3rx kiedq kjrct
kkhon koe2t kqf2w ks07g kvcry kvm9h kvva5 kz8hp l4lri l5nax l7h1l l7hxp l8uvf lau1d lb2y6 lc65o ldaq0 ldhsw lhy2i ljo53 lkh4z lklt3
lna3t lorgn lp5qj lv2wz m08nd m25d8 m279e m3l1a m5c57 m75r6 m7m19 m8l0c m92fw ma647 majcr mg84v mh2s0 mkn05 mmppd mmv68 moq19 mqyk2
mvgzr mvohi n1oe4 n7cuh n7cw5 nczpi nddzi ng6fz nidkz njoyf nklev nomai np0lm np4dd npptm nw2n6 nwmeq nyd7l nzp9t o07sl o0uj3 o7yr8
obpxx oe338 oe660 of7ax ofk6o ofwza ogfhm okvgl omvt2 oqfdp or82d orjvj ot6vf oteef ozydi p10k8 p261u p5dne p5sxr p636i p6pa3 pa6ap
papbj pbpcb pcads pesto pfvg8 pg3gl phxb1 piv0d pjseg pjzyq poiyu pou59 powne pqea7 q37cb q8sjx q8xlp qbp8r qcgxd qctg7 qe0d8 qlda1
qlpzf qmcae qmym5 qpcsx qqupj qqwy4 qs8u0 qtmw9 qu51p qujct quozd qvc3y qwk8f qyhzu r247d r50o4 r53kb r5oge r6fa5 rb6qt rbc8g rd08r
rfa6f rfrcz rfxzn rg1q5 rikdm riprl rlk4s ro3c6 rqcka rqo99 rrvfj rtfa7 rtoel rxihx ry46o ryw14 rz6mf s2mvt s5yb5 s6dgt s6jtz s78h7
s7x0g sgiu9 sh532 sh7u5 sj17p skoj4 somr0 svxey swyys t2pfm t5o8f t74pe t8mmi tahbi taj9a tckrc tfcdm tflt2 tfmhp tjztb tn9kf tot2d
tpho4 trjn8 tsgla tsmni tt0rn ttztk tuk73 twics ty0or u1eva u6cpb u7dd7 u7ek7 u84vy u95ob u96tq u9qon ubugs ucfpw udaj7 unfat ur0qj
urxb7 us6kp usfsp v9ihz vby7q vc4bk vcmpc vdbxw vexie vi9ns vjgd6 vovtb vp69j vsy7w vwer5 vwuy0 vzasc vzqo8 w046g w4luo wbpax wddsi
wde0h we6yr weo2e wepmc wfpac wgf19 wk5m7 wlqs0 wna4t wnnkm wsiok wtjt0 wtqlt wxln0 wyo4h wzhka x033b x085r x0ky9 x0lfr x2rpq x339z
x3xx5 x41e1 x9yak xbh0r xbmtz xbsbt xca3s xcqfg xcstf xdjo1 xgfrv xhjlk xif10 xiog0 xmue5 xo1uj xplja xs33b xsm53 xttsq xulzc xz0j1
y07zy y17zr y2l8p y3te3 y6hpz y6z0d y91it ya3nf ybi3y yf8wo yijmf yj0sm ylang ym9mm yo2z4 yp0xy yq7gh yqcyn yrheb yrxjg ys6oc ywxga
yxiys yxvx0 yy5xh yyyzq z07gi z24py z51ct z7gnz z7irf z803i z8leg z9su6 zam9z zc6wh zf9q1 zggkx zgs9p zk3kb zl628 zs0ph zurg0 zvhl4
`
  .trim()
  .replaceAll("\n", " ");
