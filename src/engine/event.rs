//! Things that happen at one instant, in a fixed order whatever the order in the file.

/// Something that happens at one instant.
#[derive(Debug, Clone, PartialEq)]
pub struct Event {
    /// Minutes since midnight of day 0.
    pub minute: u32,
    /// Dotted path of the entry of the scenario, for example `changes.early`.
    pub name: String,
    /// What happens.
    pub kind: EventKind,
}

/// What can happen at one instant. Events of one minute happen in the order of this list.
#[derive(Debug, Clone, PartialEq)]
pub enum EventKind {
    /// A share of a stand is cut off and leaves the tank.
    Trim {
        /// Which stand, or none for all.
        stand: Option<usize>,
        /// Share removed, 0 to 1.
        share: f64,
    },
    /// A share of the detritus is siphoned off.
    Siphon {
        /// Share removed, 0 to 1.
        share: f64,
    },
    /// A share of the algae is wiped off.
    Wipe {
        /// Share removed, 0 to 1.
        share: f64,
    },
    /// The filter is cleaned: that share of its films is lost.
    CleanFilter {
        /// Share of the filter's films, 0 to 1.
        share: f64,
    },
    /// Water is changed, as a share of the water present, and the tank filled to the line.
    Change {
        /// Share of the water present, 0 to 1.
        share: f64,
    },
    /// Something is dosed.
    Dose(Dose),
    /// Films are brought in, mg COD per guild.
    Seed {
        /// Ammonia oxidisers, nitrite oxidisers, complete oxidisers.
        mg_cod: [f64; 3],
    },
    /// A stand of the plan is planted.
    Plant {
        /// Which stand.
        stand: usize,
    },
    /// Animals go in.
    Stock(Animals),
    /// Feed that nobody ate falls to the ground.
    Uneaten {
        /// Dry feed, g.
        feed_g: f64,
        /// Protein share, 0 to 1.
        protein_frac: f64,
    },
}

impl EventKind {
    /// Place in the order of one instant.
    pub fn rank(&self) -> u8 {
        match self {
            EventKind::Trim { .. } => 0,
            EventKind::Siphon { .. } => 1,
            EventKind::Wipe { .. } => 2,
            EventKind::CleanFilter { .. } => 3,
            EventKind::Change { .. } => 4,
            EventKind::Dose(_) => 5,
            EventKind::Seed { .. } => 6,
            EventKind::Plant { .. } => 7,
            EventKind::Stock(_) => 8,
            EventKind::Uneaten { .. } => 9,
        }
    }
    /// What is done, in words.
    pub fn words(&self) -> String {
        let percent = |share: f64| format!("{} %", (share * 1000.0).round() / 10.0);
        match self {
            EventKind::Trim { share, .. } => format!("trim {}", percent(*share)),
            EventKind::Siphon { share } => {
                format!("siphon off {} of the detritus", percent(*share))
            }
            EventKind::Wipe { share } => format!("wipe off {} of the algae", percent(*share)),
            EventKind::CleanFilter { share } => format!("clean {} of the filter", percent(*share)),
            EventKind::Change { share } => format!("water change {}", percent(*share)),
            EventKind::Dose(_) => "dose".into(),
            EventKind::Seed { .. } => "seed".into(),
            EventKind::Plant { .. } => "plant".into(),
            EventKind::Stock(animals) => format!("animals in, {} g", animals.mass_g),
            EventKind::Uneaten { feed_g, .. } => format!("{feed_g} g of feed left uneaten"),
        }
    }
    /// Whether water is changed.
    pub fn is_change(&self) -> bool {
        matches!(self, EventKind::Change { .. })
    }
    /// Whether the event belongs to animals and their feed.
    pub fn is_about_animals(&self) -> bool {
        matches!(self, EventKind::Stock(_) | EventKind::Uneaten { .. })
    }
}

/// What a dose adds per litre of water present. Salts are neutral: their partner ion is inert.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Dose {
    /// Ammonium salt, mg N/L.
    pub ammonium_mg_n_per_l: f64,
    /// Ammonia solution (also raises alkalinity), mg N/L.
    pub ammonia_mg_n_per_l: f64,
    /// Nitrate salt, mg N/L.
    pub nitrate_mg_n_per_l: f64,
    /// Phosphate salt, mg P/L.
    pub phosphate_mg_p_per_l: f64,
    /// Potassium salt, mg/L.
    pub potassium_mg_per_l: f64,
    /// Chelated iron, mg/L.
    pub iron_mg_per_l: f64,
    /// Bicarbonate (alkalinity and inorganic carbon alike), meq/L.
    pub bicarbonate_meq_per_l: f64,
    /// Calcium and magnesium salts, meq/L.
    pub hardness_meq_per_l: f64,
    /// Chloride salt, mg/L.
    pub chloride_mg_per_l: f64,
}

/// One group of animals.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Animals {
    /// Live mass, g.
    pub mass_g: f64,
    /// Dry feed, g per day, spread evenly.
    pub feed_g_per_day: f64,
    /// Protein share of the feed, 0 to 1.
    pub protein_frac: f64,
    /// Whether they are shrimp (another limit for nitrate).
    pub shrimp: bool,
}
