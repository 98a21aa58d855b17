import type { ShotDocument } from '@leeway/contract';

/** A second shot of the made-up course, as a plan has it. */
export const shotOf = (): ShotDocument => ({
  "from": {
    "lon": -27.598908306,
    "lat": 48.901697156
  },
  "lie": "fairway",
  "toFlagM": 122.221,
  "landsM": 118.02,
  "finishesM": 120.852,
  "todaysNumber": {
    "toLandingM": 118.02,
    "windM": 0,
    "slopeM": 0,
    "airM": 0,
    "lieM": 0,
    "playsM": 118.02
  },
  "option": {
    "club": "8-iron",
    "swing": "full"
  },
  "evidence": "fitted",
  "aim": {
    "lon": -27.598153891,
    "lat": 48.902663263,
    "beyondFlagM": -1.535,
    "rightOfFlagM": -6.093
  },
  "spot": {
    "lon": -27.598132877,
    "lat": 48.902656131,
    "beyondFlagM": -1.448,
    "rightOfFlagM": -4.362
  },
  "startLine": "2 yd right of the back bunker",
  "expectedStrokes": 3.553509,
  "doubt": {
    "se": 0.061989,
    "balls": 38,
    "lo80": 3.474067,
    "hi80": 3.632951
  },
  "atFlag": {
    "option": {
      "club": "8-iron",
      "swing": "full"
    },
    "expectedStrokes": 3.656201,
    "doubt": {
      "se": 0.072658,
      "balls": 38,
      "lo80": 3.563086,
      "hi80": 3.749316
    }
  },
  "chances": {
    "green": 0.572105259,
    "fairway": 0.202896803,
    "rough": 0.163377797,
    "bunker": 0.004377947,
    "penalty": 0.057217916,
    "outOfBounds": 0,
    "recovery": 2.4278e-05,
    "unmapped": 0
  },
  "room": [
    {
      "more": 0.1,
      "leftM": 15.297,
      "rightM": 14.219,
      "shortM": 20.156,
      "longM": 14.359
    },
    {
      "more": 0.25,
      "leftM": 18.68,
      "rightM": 14.445,
      "shortM": 23.273,
      "longM": 20.617
    }
  ],
  "proximity": {
    "meanM": 19.815,
    "medianM": 13.351
  },
  "reasons": [
    "Straight at the flag 3.66, because 10 in 100 of this player's 8-irons finish in Tolvane Creek; from the spot 6."
  ],
  "alternatives": [
    {
      "option": {
        "club": "9-iron",
        "swing": "full"
      },
      "aim": {
        "lon": -27.598219242,
        "lat": 48.902583745,
        "beyondFlagM": -11.588,
        "rightOfFlagM": -5.798
      },
      "spot": {
        "lon": -27.59819994,
        "lat": 48.902577225,
        "beyondFlagM": -11.505,
        "rightOfFlagM": -4.21
      },
      "expectedStrokes": 3.616802,
      "doubt": {
        "se": 0.059383,
        "balls": 30,
        "lo80": 3.540699,
        "hi80": 3.692905
      },
      "costsMore": 0.063293,
      "why": "half of the balls finish more than 19 yd from the flag; from the spot 15 yd"
    },
    {
      "option": {
        "club": "7-iron",
        "swing": "three-quarter"
      },
      "aim": {
        "lon": -27.598231432,
        "lat": 48.90260684,
        "beyondFlagM": -9.816,
        "rightOfFlagM": -7.86
      },
      "spot": {
        "lon": -27.598180577,
        "lat": 48.902590394,
        "beyondFlagM": -9.526,
        "rightOfFlagM": -3.717
      },
      "expectedStrokes": 3.640522,
      "doubt": {
        "se": 0.080807,
        "balls": 20,
        "lo80": 3.536964,
        "hi80": 3.744081
      },
      "costsMore": 0.087014,
      "why": "half of the balls finish more than 18 yd from the flag; from the spot 15 yd"
    }
  ]
});
