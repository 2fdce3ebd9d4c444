/**
 * Beer Judge Certification Program, 2021 Beer Style Guidelines: the "vital statistics", numeric facts only. A line for
 * each style that has them: code, name, then lowest and highest of original gravity and final gravity (points above
 * 1.000), alcohol (tenths of % v/v), bitterness (IBU) and colour (SRM). Written so tightly because every Excel loads it.
 *
 * 21Ba to 21Bg and 27B to 27I are codes of ours, or of the copy that was read: the guidelines print these names without a letter.
 *
 * 25B Saison: alcohol and colour span all its variants, the gravities belong to the one of standard strength. 23F Fruit
 * Lambic: the colour changes with the fruit.
 */
export const styleLines = `
1A American Light Lager 28 40 -2 8 28 42 8 12 2 3
1B American Lager 40 50 4 10 42 53 8 18 2 3.5
1C Cream Ale 42 55 6 12 42 56 8 20 2 5
1D American Wheat Beer 40 55 8 13 40 55 15 30 3 6
2A International Pale Lager 42 50 8 12 45 60 18 25 2 6
2B International Amber Lager 42 55 8 14 45 60 8 25 6 14
2C International Dark Lager 44 56 8 12 42 60 8 20 14 30
3A Czech Pale Lager 28 44 8 14 30 41 20 35 3 6
3B Czech Premium Pale Lager 44 60 13 17 42 58 30 45 3.5 6
3C Czech Amber Lager 44 60 13 17 44 58 20 35 10 16
3D Czech Dark Lager 44 60 13 17 44 58 18 34 17 35
4A Munich Helles 44 48 6 12 47 54 16 22 3 5
4B Festbier 54 57 10 12 58 63 18 25 4 6
4C Helles Bock 64 72 11 18 63 74 23 35 6 9
5A German Leichtbier 26 34 6 10 24 36 15 28 1.5 4
5B Kölsch 44 50 7 11 44 52 18 30 3.5 5
5C German Helles Exportbier 50 58 8 15 50 60 20 30 4 6
5D German Pils 44 50 8 13 44 52 22 40 2 4
6A Märzen 54 60 10 14 56 63 18 24 8 17
6B Rauchbier 50 57 12 16 48 60 20 30 12 22
6C Dunkles Bock 64 72 13 19 63 72 20 27 14 22
7A Vienna Lager 48 55 10 14 47 55 18 30 9 15
7B Altbier 44 52 8 14 43 55 25 50 9 17
8A Munich Dunkel 48 56 10 16 45 56 18 28 17 28
8B Schwarzbier 46 52 10 16 44 54 20 35 19 30
9A Doppelbock 72 112 16 24 70 100 16 26 6 25
9B Eisbock 78 120 20 35 90 140 25 35 17 30
9C Baltic Porter 60 90 16 24 65 95 20 40 17 30
10A Weissbier 44 53 8 14 43 56 8 15 2 6
10B Dunkles Weissbier 44 57 8 14 43 56 10 18 14 23
10C Weizenbock 64 90 15 22 65 90 15 30 6 25
11A Ordinary Bitter 30 39 7 11 32 38 25 35 8 14
11B Best Bitter 40 48 8 12 38 46 25 40 8 16
11C Strong Bitter 48 60 10 16 46 62 30 50 8 18
12A British Golden Ale 38 53 6 12 38 50 20 45 2 5
12B Australian Sparkling Ale 38 50 4 6 45 60 20 35 4 7
12C English IPA 50 70 10 15 50 75 40 60 6 14
13A Dark Mild 30 38 8 13 30 38 10 25 14 25
13B British Brown Ale 40 52 8 13 42 59 20 30 12 22
13C English Porter 40 52 8 14 40 54 18 35 20 30
14A Scottish Light 30 35 10 13 25 33 10 20 17 25
14B Scottish Heavy 35 40 10 15 33 39 10 20 12 20
14C Scottish Export 40 60 10 16 39 60 15 30 12 20
15A Irish Red Ale 36 46 10 14 38 50 18 28 9 14
15B Irish Stout 36 44 7 11 38 50 25 45 25 40
15C Irish Extra Stout 52 62 10 14 50 65 35 50 30 40
16A Sweet Stout 44 60 12 24 40 60 20 40 30 40
16B Oatmeal Stout 45 65 10 18 42 59 25 40 22 40
16C Tropical Stout 56 75 10 18 55 80 30 50 30 40
16D Foreign Extra Stout 56 75 10 18 63 80 50 70 30 40
17A British Strong Ale 55 80 15 22 55 80 30 60 8 22
17B Old Ale 55 88 15 22 55 90 30 60 10 22
17C Wee Heavy 70 130 18 40 65 100 17 35 14 25
17D English Barley Wine 80 120 18 30 80 120 35 70 8 22
18A Blonde Ale 38 54 8 13 38 55 15 28 3 6
18B American Pale Ale 45 60 10 15 45 62 30 50 5 10
19A American Amber Ale 45 60 10 15 45 62 25 40 10 17
19B California Common 48 54 11 14 45 55 30 45 9 14
19C American Brown Ale 45 60 10 16 43 62 20 30 18 35
20A American Porter 50 70 12 18 48 65 25 50 22 40
20B American Stout 50 75 10 22 50 70 35 75 30 40
20C Imperial Stout 75 115 18 30 80 120 50 90 30 40
21A American IPA 56 70 8 14 55 75 40 70 6 14
21Ba Specialty IPA: Belgian IPA 58 80 8 16 62 95 50 100 5 8
21Bb Specialty IPA: Black IPA 50 85 10 18 55 90 50 90 25 40
21Bc Specialty IPA: Brown IPA 56 70 8 16 55 75 40 70 18 35
21Bd Specialty IPA: Red IPA 56 70 8 16 55 75 40 70 11 17
21Be Specialty IPA: Rye IPA 56 75 8 14 55 80 50 75 6 14
21Bf Specialty IPA: White IPA 56 65 10 16 55 70 40 70 5 6
21Bg Specialty IPA: Brut IPA 46 57 -10 4 60 75 20 30 2 4
21C Hazy IPA 60 85 10 15 60 90 25 60 3 7
22A Double IPA 65 85 8 18 75 100 60 100 6 14
22B American Strong Ale 62 90 14 24 63 100 50 100 7 18
22C American Barleywine 80 120 16 30 80 120 50 100 9 18
22D Wheatwine 80 120 16 30 80 120 30 60 6 14
23A Berliner Weisse 28 32 3 6 28 38 3 8 2 3
23B Flanders Red Ale 48 57 2 12 46 65 10 25 10 17
23C Oud Bruin 40 74 8 12 40 80 20 25 17 22
23D Lambic 40 54 1 10 50 65 0 10 3 6
23E Gueuze 40 54 0 6 50 80 0 10 5 6
23F Fruit Lambic 40 60 0 10 50 70 0 10 3 7
23G Gose 36 56 6 10 42 48 5 12 3 4
24A Witbier 44 52 8 12 45 55 8 20 2 4
24B Belgian Pale Ale 48 54 10 14 48 55 20 30 8 14
24C Bière de Garde 60 80 8 16 60 85 18 28 6 19
25A Belgian Blond Ale 62 75 8 18 60 75 15 30 4 6
25B Saison 48 65 2 8 35 95 20 35 5 22
25C Belgian Golden Strong Ale 70 95 5 16 75 105 22 35 3 6
26A Belgian Single 44 54 4 10 48 60 25 45 3 5
26B Belgian Dubbel 62 75 8 18 60 76 15 25 10 17
26C Belgian Tripel 75 85 8 14 75 95 20 40 4.5 7
26D Belgian Dark Strong Ale 75 110 10 24 80 120 20 35 12 22
27B Historical: Kentucky Common 44 55 10 18 40 55 15 30 11 20
27C Historical: Lichtenhainer 32 40 4 8 35 47 5 12 3 6
27D Historical: London Brown Ale 33 38 12 15 28 36 15 20 22 35
27E Historical: Piwo Grodziskie 28 32 6 12 25 33 20 35 3 6
27F Historical: Pre-Prohibition Lager 44 60 10 15 45 60 25 40 3 6
27G Historical: Pre-Prohibition Porter 46 60 10 16 45 60 20 30 20 30
27H Historical: Roggenbier 46 56 10 14 45 60 10 20 14 19
27I Historical: Sahti 76 120 16 38 70 110 0 15 4 22
28D Straight Sour Beer 48 65 6 13 45 70 3 8 2 3
29D Grape Ale 59 75 4 13 60 85 10 30 4 8
`;
