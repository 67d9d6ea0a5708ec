//! Words that several lessons explain alike.

use super::super::Term;

/// Total ammonia.
pub const TOTAL_AMMONIA: Term = Term {
    word: "total ammonia",
    meaning: "ammonium and free ammonia together, what a drop test shows; here in mg of nitrogen per litre (mg N/L), \
        1 mg N/L being 1.29 mg/L on a card that counts ammonium (NH4)",
};
/// Nitrite.
pub const NITRITE: Term = Term {
    word: "nitrite",
    meaning: "what the first microbes make of ammonia, poisonous too; 1 mg N/L is 3.28 mg/L on a card for nitrite (NO2)",
};
/// Nitrifiers.
pub const NITRIFIERS: Term = Term {
    word: "nitrifiers",
    meaning: "microbes in films on every surface: ammonia oxidisers turn ammonia to nitrite, nitrite oxidisers turn nitrite \
        to nitrate, complete oxidisers do both; they double in days, not hours",
};
/// The unit in which microbes are weighed.
pub const MG_COD: Term = Term {
    word: "mg COD",
    meaning: "milligrams by which microbes are weighed: of the oxygen it would take to burn them",
};
/// Capacity.
pub const CAPACITY: Term = Term {
    word: "capacity",
    meaning: "what the nitrifiers could turn over in a day if there were plenty of it; no test shows it. It rises and falls \
        by day and night with pH, so its curve is a zig-zag",
};
/// KH.
pub const KH: Term = Term {
    word: "KH",
    meaning: "alkalinity, the bicarbonate that holds pH up and that nitrifiers use; 1 dKH is 17.8 mg/L as calcium carbonate",
};
/// Ready.
pub const READY: Term = Term {
    word: "ready",
    meaning: "from that day on ammonia and nitrite stay within their limits, and the nitrifiers could handle the feed of the \
        planned fish",
};
/// Plausible tanks.
pub const PLAUSIBLE: Term = Term {
    word: "plausible tanks",
    meaning: "tanks like this one that differ in what nobody knows: how much ammonia the soil gives, how many nitrifiers there \
        are at first, how much gas the surface lets through; the curves are those of the central run, the one tank that has the \
        usual value of each",
};
/// Limits.
pub const LIMIT: Term = Term {
    word: "limit",
    meaning: "the value by which a tank is judged, a cautious one and yours to change; firstfill explain limits lists them",
};
/// Free ammonia.
pub const FREE_AMMONIA: Term = Term {
    word: "free ammonia",
    meaning: "the part of it (NH3) that passes gills and harms; the rest is ammonium (NH4), which hardly does; pH decides \
        how much is which",
};
/// Carbon dioxide.
pub const CO2: Term = Term {
    word: "CO2",
    meaning: "carbon dioxide, food of the plants by day; it makes water more acid, and over 30 mg/L it harms animals",
};
/// Oxygen.
pub const OXYGEN: Term = Term {
    word: "oxygen",
    meaning: "what everything in the tank breathes; water at 25 °C in balance with the air holds about 8.2 mg/L",
};
