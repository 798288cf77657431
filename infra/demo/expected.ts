import type { Verdict } from "#core/job/index.ts";

/** What a finding must come to, worked out by hand. Lengths in micrometres, times in milliseconds. */
export interface Expected {
  readonly check: string;
  readonly tag?: string;
  readonly verdict: Verdict;
  readonly value?: number;
  /** U = 2 u. */
  readonly doubt?: number;
  readonly arithmetic: string;
}

/*
 * Half-widths over the square root of three, micrometres (own figures of design and sheet):
 *   wiped rim, hard edge, still water, 1/16 in marks of placing   1588 / 1.7321 =  916.8
 *   liner edge, running water                                     6350 / 1.7321 = 3666.2
 *   turf or gravel                                               12700 / 1.7321 = 7332.3
 *   receiver on fine, 1/16 in                                   1587.5 / 1.7321 =  916.5
 *   laser's slope, 1/16 in in 100 ft, at 40 ft                     635 / 1.7321 =  366.6
 *   spirit level, 0.5 mm/m over 4 ft                             609.6 / 1.7321 =  352.0
 *   class II tape up to 1 m: 0.5 mm                                500 / 1.7321 =  288.7
 * Step d read, d / (2 x 1.7321): 1/32 in 229.2, 1/16 in 458.3, 1/8 in 916.5, 1/4 in 1833.1, 1/2 in 3666.2, 1 in 7332.3.
 * One rod reading at 40 ft: sqrt(458.3^2 + 916.8^2 + 916.5^2 + 366.6^2) = 1423.0 = r. What the set-up shares cancels.
 *
 * Ties: the site in inches, A (0, 0), B (190.5, 0), C (130.5, 170.5), valve (90.5, 90.25), bend (176.25, 90.5), crossing
 * (121.25, 90.25), lid (48.25, 96.25), basin (40.25, 90.25), outlet (-48.5, 3.75); every tie is its distance to the nearest
 * 1/4 in. u of a tie: hard edge 916.8, its step, class II tape; 1/4 in: 2.09 to 2.27 mm, 1/2 in: 3.85 (AB) and 3.81 (B to the
 * bend). The place's covariance, mm2, xx, xy, yy: by the inverse of the unit vectors from the marks, what A, B and C share
 * carried along, three ties weighted by the inverse of their covariance; its larger root times 2.44775 (95 cases of 100).
 */

/** Courtyard fall. */
export const courtyardExpected: readonly Expected[] = [
  {
    check: "cord-reaches",
    verdict: "within",
    value: 4_191_000,
    doubt: 20_793,
    arithmetic:
      "13 ft 9 in = 165 in = 4191.0 mm; at most 20 ft - 28 in - 3 ft = 176 in = 4470.4. u: turf 7332.3, step 1 in 7332.3, tape at 5 m 1.3 mm / 1.7321 = 750.6; sqrt = 10396.6, U = 20793. 4191.0 + 20.8 = 4211.8 < 4470.4",
  },
  {
    check: "ticket-when-begun",
    verdict: "within",
    value: 58_200_000,
    arithmetic: "hole begun 12 May 09:10, ticket from 11 May 17:00: 16 h 10 min inside, the other end is 23 days off",
  },
  {
    check: "level-along-round",
    verdict: "within",
    value: 3_175,
    doubt: 4_025,
    arithmetic: "|41 5/16 - 41 3/16| = 1/8 in = 3.175 mm; u = r x 1.41421 = 2012.5, U = 4025. 3.175 + 4.025 = 7.2 < 12.7",
  },
  {
    check: "level-across-round",
    verdict: "within",
    value: 6_350,
    doubt: 4_025,
    arithmetic:
      "after rework |41 1/16 - 41 5/16| = 1/4 in = 6.35 mm; 6.35 + 4.025 = 10.375 < 12.7. Before: |42 9/16 - 41 13/16| = 3/4 in = 19.05; 19.05 - 4.025 = 15.025 > 12.7, outside",
  },
  {
    check: "fourth-quarter",
    verdict: "within",
    value: -3_175,
    doubt: 5_692,
    arithmetic:
      "heights are minus the rod: -41 3/16 + 41 5/16 - 41 5/16 + 41 1/16 = -1/8 in = -3.175 mm; u = 2 r = 2846, U = 5692. -3.175 - 5.692 = -8.867 > -12.7",
  },
  {
    check: "rim-below-grade",
    verdict: "within",
    value: 127_794,
    doubt: 3_190,
    arithmetic:
      "mean of 41 3/16, 41 5/16, 41 5/16, 41 1/16 = 41 7/32; less the stake 36 3/16 = 5 1/32 in = 127.794 mm; design 5 in ± 1 = 101.6 to 152.4. u: sqrt(r^2 / 4 + r^2) = 1591; class II tape at 2 m 0.7 mm for the rim and at 1 m 0.5 mm for the stake, one tape: (0.7 - 0.5) / 1.7321 = 115.5; sqrt = 1595.2, U = 3190",
  },
  {
    check: "rim-moved",
    verdict: "within",
    value: -3_969,
    arithmetic:
      "place 1: before, mark 27 19/32 - 41 3/16 = -13 19/32; after, 30 1/16 - 43 11/16 = -13 5/8: -1/32 in. Place 3: before 27 19/32 - 41 5/16 = -13 23/32; after 30 1/16 - 43 15/16 = -13 7/8: -5/32 in = -3.969 mm, the larger. Simple acceptance: inside ± 9.525",
  },
  { check: "marks-found", tag: "A", verdict: "within", arithmetic: "where the plan begins" },
  { check: "marks-found", tag: "B", verdict: "within", arithmetic: "on the plan's level line" },
  {
    check: "marks-found",
    tag: "C",
    verdict: "within",
    value: 8_696,
    arithmetic: "12.051, -2.197, 4.153; larger root 12.621; 3.5526 mm x 2.44775 = 8.696 mm; 8.7 < 12.7",
  },
  {
    check: "basin-found",
    verdict: "within",
    value: 9_120,
    arithmetic: "11.313, -4.540, 5.858; larger root 13.881; 3.7258 mm x 2.44775 = 9.120 mm; 9.1 < 152.4",
  },
  {
    check: "points-found",
    tag: "1",
    verdict: "within",
    value: 8_492,
    arithmetic: "8.436, -4.403, 6.649; larger root 12.035; 3.4691 mm x 2.44775 = 8.492 mm; 8.5 < 101.6",
  },
  {
    check: "points-found",
    tag: "2",
    verdict: "within",
    value: 10_177,
    arithmetic:
      "8.800, -5.875, 13.222; larger root 17.288; 4.1579 mm x 2.44775 = 10.177 mm; 10.2 < 101.6; of the two places, (176.4, 90.4) and (176.4, -90.4), the one on the left",
  },
  {
    check: "crossings-found",
    tag: "1",
    verdict: "within",
    value: 6_948,
    arithmetic: "6.416, -2.211, 5.079; larger root 8.058; 2.8386 mm x 2.44775 = 6.948 mm; 6.9 < 101.6",
  },
  {
    check: "lid-found",
    verdict: "within",
    value: 9_576,
    arithmetic: "13.574, -3.978, 6.171; larger root 15.307; 3.9124 mm x 2.44775 = 9.576 mm; 9.6 < 152.4",
  },
  {
    check: "outlet-found",
    verdict: "within",
    value: 12_347,
    arithmetic:
      "3.867, -2.408, 25.176; larger root 25.444; 5.0442 mm x 2.44775 = 12.347 mm; 12.3 < 152.4; on the right for someone at C who looks to A",
  },
  {
    check: "cure-passed",
    tag: "1",
    verdict: "within",
    value: 60_600_000,
    arithmetic: "12 May 15:02 to 13 May 7:52 = 16 h 50 min; at least the can's 6 h. The phones' clocks bring minutes at most",
  },
  {
    check: "cure-passed",
    tag: "2",
    verdict: "within",
    value: 56_940_000,
    arithmetic: "12 May 16:04 to 13 May 7:53 = 15 h 49 min; at least 6 h",
  },
  {
    check: "set-passed",
    tag: "1",
    verdict: "within",
    value: 60_960_000,
    arithmetic: "12 May 15:02 to the trench filled, 13 May 7:58 = 16 h 56 min; the can gives one time only, 6 h, and it stands for the set",
  },
  {
    check: "set-passed",
    tag: "2",
    verdict: "within",
    value: 67_560_000,
    arithmetic: "12 May 16:04 to the rock set, 13 May 10:50 = 18 h 46 min; at least 6 h",
  },
  {
    check: "socket-plausible",
    verdict: "within",
    value: 34_925,
    doubt: 2_656,
    arithmetic:
      "1 3/8 in = 34.925 mm; a 2 in Schedule 40 socket is 1.156 in = 29.362 deep at least. u: hard edge 916.8, step 1/8 in 916.5, tape 288.7; sqrt = 1328.1, U = 2656. 32.269 > 29.362",
  },
  {
    check: "stone-load",
    verdict: "not taken",
    arithmetic:
      "4 in over the lid, the tank's 14.75 ft2: 0.3333 x 14.75 x 100 = 492 lb; the lid's card says no load, so its maker is asked and nothing is compared",
  },
  { check: "wire-drop", verdict: "not taken", arithmetic: "no wire was laid" },
  { check: "wire-cover", verdict: "not taken", arithmetic: "no wire was laid" },
  { check: "water-left-winter", verdict: "not taken", arithmetic: "not emptied yet" },
  {
    check: "water-left-in",
    verdict: "within",
    value: 234_950,
    doubt: 8_618,
    arithmetic:
      "9 1/4 in = 234.95 mm down; 1 in of rain in the hole, 6 ft 4 in across less the tank's 4 ft 4 in: 1 x 31.50 / (31.50 - 14.75) = 1.88 in; 46 lb rise on 46 / (62.3 x 14.75) ft = 0.60 in; leave 1.28 in and its doubt, 2.44 in in all; 28 - 2.44 = 25.6 in = 649 mm at most. u: rim and water 916.8 each, step 1/4 in 1833.1, tape 288.7, tank's depth ± 1/4 in 3666.2; sqrt = 4308.8, U = 8618",
  },
  {
    check: "pipe-home",
    tag: "1",
    verdict: "within",
    value: 1_588,
    doubt: 2_130,
    arithmetic:
      "2 1/16 - 2 in = 1/16 in short; the socket's depth drops out. u: hard edge 916.8, step 1/16 in 458.3, tape 288.7; sqrt = 1064.9, U = 2130. 3.718 < 6.35",
  },
  {
    check: "pipe-home",
    tag: "2",
    verdict: "within",
    value: 3_175,
    doubt: 2_656,
    arithmetic: "2 1/8 - 2 in = 1/8 in; u: 916.8, step 1/8 in 916.5, 288.7; sqrt = 1328.1, U = 2656. 5.831 < 6.35",
  },
  {
    check: "cover-depth",
    verdict: "within",
    value: 292_100,
    doubt: 16_507,
    arithmetic:
      "11 1/2 in = 292.1 mm; u: turf 7332.3, step 1/2 in 3666.2, hard edge 916.8, tape 288.7; sqrt = 8253.6, U = 16507. 292.1 - 16.5 = 275.6 > 203.2",
  },
  {
    check: "lip-level",
    tag: "A",
    verdict: "within",
    value: 1_588,
    doubt: 324,
    arithmetic: "(3/32 + 1/32) / 2 = 1/16 in = 1.588 mm; the level's error drops out; u = 229.2 / 1.41421 = 162.1, U = 324. 1.912 < 3.175",
  },
  {
    check: "lap-past-rim",
    tag: "A",
    verdict: "within",
    value: 234_950,
    doubt: 8_420,
    arithmetic:
      "9 1/4 in = 234.95 mm; u: liner edge 3666.2, wiped rim 916.8, step 1/4 in 1833.1, tape 288.7; sqrt = 4210.1, U = 8420. 226.5 > 152.4",
  },
  {
    check: "patch-width",
    tag: "A",
    verdict: "outside",
    value: 20_638,
    doubt: 2_810,
    arithmetic:
      "13/16 in = 20.638 mm; u: two hard edges 916.8, step 1/16 in 458.4, tape 288.7; sqrt = 1405.2, U = 2810. 20.638 + 2.810 = 23.448 < 25.4",
  },
  {
    check: "edge-above-coming-water",
    tag: "A",
    verdict: "within",
    value: 111_125,
    doubt: 7_830,
    arithmetic:
      "4 3/8 in = 111.125 mm; u: liner edge 3666.2, hard edge 916.8, step 1/8 in 916.5, spirit level 352.0, tape 288.7; sqrt = 3915.2, U = 7830. 103.3 > 76.2",
  },
  {
    check: "water-steady",
    verdict: "within",
    value: 1_588,
    arithmetic:
      "6 11/16 - 6 5/8 = 1/16 in; u: first 916.8, 3666.2, 916.5, 288.7 = 3899.4; second 916.8, 3666.2, 458.4, 288.7 = 3817.7; together 5457.1, U = 10914. 1.588 < 10.914, and 8 min apart",
  },
  {
    check: "draw-down",
    verdict: "within",
    value: 81_756,
    arithmetic:
      "(6 5/8 + 6 11/16) / 2 - 3 7/16 = 3 7/32 in = 81.756 mm. Expected: 45 gpm over 22 in is 123 gph/in, by Francis 0.81 in of head; pool 6 x 4 ft x 0.81 in = 12.1 gal, stream 108 x 22 x 1 1/2 in = 15.4 gal, 2 ft of pipe 0.3 gal: 27.8 gal over 9.19 gal/in = 3.03 in = 76.9 mm. Difference 4.9 mm; U about 20 mm, most of it the stream's depth; 4.9 + 20 < 38.1",
  },
  {
    check: "edge-running",
    tag: "A",
    verdict: "within",
    value: 85_725,
    doubt: 10_546,
    arithmetic:
      "3 3/8 in = 85.725 mm; u: liner edge and running water 3666.2 each, step 1/8 in 916.5, tape 288.7; sqrt = 5273.1, U = 10546. 75.2 > 50.8",
  },
  {
    check: "edge-running",
    tag: "B",
    verdict: "too close to call",
    value: 57_150,
    doubt: 11_014,
    arithmetic:
      "2 1/4 in = 57.15 mm; u: 3666.2 twice, step 1/4 in 1833.1, tape 288.7; sqrt = 5506.9, U = 11014. 57.15 - 11.01 = 46.1 < 50.8 < 57.15",
  },
  {
    check: "lip-level-rock",
    tag: "A",
    verdict: "within",
    value: 2_381,
    doubt: 324,
    arithmetic: "(3/32 + 3/32) / 2 = 2.381 mm; 2.381 + 0.324 = 2.705 < 3.175",
  },
  {
    check: "flow-measured",
    verdict: "within",
    value: 168_240,
    arithmetic:
      "20 gal in 27 s = 44.44 gpm = 168.24 L/min. Halves of 1 gal and 1 s read, mark 3 %, hand 1/2 s at each end: 44.44 x sqrt(0.025^2 + 0.03^2 + 3 x 0.0185^2) / 1.7321 = 1.30, U = 2.6 gpm. The card gives 45.0 gpm against 4 ft and 1.84 ft of friction, 0.56 gpm more",
  },
  {
    check: "room-for-rain",
    verdict: "within",
    value: 20_290,
    doubt: 4_514,
    arithmetic:
      "3 1/4 in over 14.748 ft2 of a round 52 in, from 60 ft2 of liner: 82.55 x 14.748 / 60 = 20.29 mm; at least 0.50 in of rain a day = 12.7. u: rain 25 % of 12.7 / 1.7321 = 1833.1, lined area 10 % 1171.5; 3 1/4 in: rim and water 916.8 each, step 1/4 in 1833.1, tape 288.7 = 2263.8, x 0.2458 = 556.4; diameter ± 1/2 in as typed 1.110 % = 225.2; sqrt = 2257.1, U = 4514. 15.8 > 12.7",
  },
  {
    check: "overnight-loss",
    verdict: "within",
    value: 1_966,
    doubt: 10_446,
    arithmetic:
      "1/8 in in 14 h 6 min from 1.3701 m2 = 4.350 L = 7.405 L a day. FAO-56 for 13 May (day 133), 41 °, 198 m, 23.33 and 12.78 °C, 68 %, 2.006 m/s at 2 m, 7 of 14.23 h: R_a 39.37, R_s 19.52, R_n 11.80 MJ/m2, e_s - e_a 0.695 kPa: 3.780 mm, open water 3.969 mm = 5.438 L; 7.405 - 5.438 = 1.966. u: two readings sqrt(916.8^2 x 2 + 458.3^2 + 288.7^2) = 1405.1, together 1987.2 um = 4.634 L a day; part of a day 0.4125 / 0.5875 of 5.438 / 1.7321 = 2.205; formula 0.3 / 1.05 = 0.897; weather and area 0.37; sqrt = 5.223, U = 10.45. 12.4 < 18.9",
  },
  { check: "running-loss", verdict: "not taken", arithmetic: "left to do" },
  { check: "return-edge-height", tag: "A", verdict: "not taken", arithmetic: "left to do" },
  { check: "return-edge-height", tag: "B", verdict: "not taken", arithmetic: "left to do" },
  { check: "return-lip-level", tag: "A", verdict: "not taken", arithmetic: "left to do" },
  { check: "point-tie-3", tag: "2", verdict: "not taken", arithmetic: "nobody took the third tie of point 2" },
  { check: "seams-upper-over", tag: "A", verdict: "does not apply", arithmetic: "one piece of liner; the sheet lets the crew say so" },
  { check: "plate-with-serial", verdict: "could not be taken", arithmetic: "said why, on site" },
];

/** Side-yard fall. */
export const sideYardExpected: readonly Expected[] = [
  { check: "ticket-when-begun", verdict: "not taken", arithmetic: "nobody entered the ticket's dates" },
  {
    check: "straight-edge-along",
    verdict: "within",
    value: 2_381,
    doubt: 2_017,
    arithmetic: "3/32 in = 2.381 mm; u: wiped rim 916.8, step 1/32 in 229.2, spirit level 352.0; sqrt = 1008.5, U = 2017. 4.398 < 12.7",
  },
  {
    check: "straight-edge-across",
    verdict: "within",
    value: 3_969,
    doubt: 2_017,
    arithmetic: "5/32 in = 3.969 mm; 3.969 + 2.017 = 5.986 < 12.7",
  },
  {
    check: "rim-below-grade-straight-edge",
    verdict: "within",
    value: 130_175,
    doubt: 2_748,
    arithmetic:
      "5 1/8 in = 130.175 mm; u: wiped rim 916.8, step 1/8 in 916.5, spirit level 352.0, tape 288.7; sqrt = 1374.0, U = 2748. 101.6 < 127.4, 132.9 < 152.4",
  },
  {
    check: "water-left-in",
    verdict: "within",
    value: 317_500,
    doubt: 10_704,
    arithmetic:
      "12 1/2 in = 317.5 mm down; 6 in ± 1/2 stood in the hole; 46 lb rise on 0.60 in; leave 5.40 in and its U of 0.58, 5.98 in; 28 - 5.98 = 22.0 in at most. u: rim and water 916.8 each, step 1/2 in 3666.2, tape 288.7, tank's depth 3666.2; sqrt = 5352.2, U = 10704",
  },
  {
    check: "cure-passed",
    tag: "1",
    verdict: "within",
    arithmetic:
      "52 °F, 2 in, rigid: 4 h by a pipe maker's table, half as long again where nobody said dry: 6 h; 13 May 15:18 + 6 h = 21:18",
  },
  {
    check: "set-passed",
    tag: "1",
    verdict: "within",
    arithmetic: "52 °F, 2 in, rigid: 2 h by a pipe maker's table, half as long again: 3 h; 13 May 15:18 + 3 h = 18:18",
  },
  { check: "pipe-home", tag: "1", verdict: "not taken", arithmetic: "no mark was read" },
  { check: "draw-down", verdict: "not taken", arithmetic: "no water yet" },
  { check: "cover-depth", verdict: "not taken", arithmetic: "the trench is still open" },
];

/** What each covering of the first job showed when it was done, and how it reads once the office has had its say. */
export const courtyardCoverings = [
  { covering: "backfill-basin", shown: "clear", now: "clear" },
  { covering: "fill-trench", shown: "clear", now: "clear" },
  { covering: "set-rock", shown: "not yet", now: "clear" },
  { covering: "trim-liner-edge", shown: "on word", now: "clear" },
  { covering: "stone-over-basin", shown: "clear", now: "clear" },
] as const;
