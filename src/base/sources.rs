//! Where numbers come from: every publication once, and how well each value is founded.

/// A published work, named once.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Work {
    /// Short key, as printed beside a value.
    pub key: &'static str,
    /// Full reference.
    pub text: &'static str,
}

/// How well a value is founded.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Evidence {
    /// Read in a published text.
    Published,
    /// From memory; not re-read for this project.
    Memory,
    /// Follows by calculation from other values.
    Derived,
    /// Common practice of the trade, no source.
    Practice,
    /// Chosen inside its range so that known observations come out; a calibration value.
    Calibrated,
    /// Fixed by definition.
    Definition,
}

impl Evidence {
    /// The words printed for it.
    pub fn words(self) -> &'static str {
        match self {
            Evidence::Published => "published",
            Evidence::Memory => "from memory",
            Evidence::Derived => "derived",
            Evidence::Practice => "common practice, no source",
            Evidence::Calibrated => "calibrated",
            Evidence::Definition => "definition",
        }
    }
}

/// The origin of one value.
#[derive(Debug, Clone, Copy)]
pub struct Source {
    /// How well it is founded.
    pub evidence: Evidence,
    /// The works it rests on; may be empty.
    pub works: &'static [Work],
    /// What was taken or done, in a few words; may be empty.
    pub note: &'static str,
}

impl Source {
    /// One line: evidence, works, note.
    pub fn line(&self) -> String {
        let keys: Vec<&str> = self.works.iter().map(|w| w.key).collect();
        let mut line = self.evidence.words().to_string();
        if !keys.is_empty() {
            line += &format!(": {}", keys.join("; "));
        }
        if !self.note.is_empty() {
            line += &format!(" ({})", self.note);
        }
        line
    }
}

/// A value read in published works.
pub const fn published(works: &'static [Work], note: &'static str) -> Source {
    Source {
        evidence: Evidence::Published,
        works,
        note,
    }
}
/// A value from memory, with the works remembered.
pub const fn memory(works: &'static [Work], note: &'static str) -> Source {
    Source {
        evidence: Evidence::Memory,
        works,
        note,
    }
}
/// A value that follows by calculation.
pub const fn derived(note: &'static str) -> Source {
    Source {
        evidence: Evidence::Derived,
        works: &[],
        note,
    }
}
/// A habit of the trade.
pub const fn practice(note: &'static str) -> Source {
    Source {
        evidence: Evidence::Practice,
        works: &[],
        note,
    }
}
/// A calibration value, with the works that bound it.
pub const fn calibrated(works: &'static [Work], note: &'static str) -> Source {
    Source {
        evidence: Evidence::Calibrated,
        works,
        note,
    }
}
/// A value that is so by definition.
pub const fn definition(note: &'static str) -> Source {
    Source {
        evidence: Evidence::Definition,
        works: &[],
        note,
    }
}

macro_rules! works {
    ($($name:ident = $key:literal, $text:literal;)*) => {
        $(#[doc = $text] pub const $name: Work = Work { key: $key, text: $text };)*
        /// Every work, in the order above.
        pub const ALL_WORKS: &[Work] = &[$($name),*];
    };
}

works! {
    ANTHONISEN_1976 = "Anthonisen 1976", "Anthonisen et al. 1976, J. Water Pollut. Control Fed. 48:835";
    BAGCHI_2014 = "Bagchi 2014", "Bagchi et al. 2014, PLoS ONE 9:e113515";
    BEST_1986 = "Best 1986", "Best 1986, Physiologia Plantarum (Ceratophyllum photosynthesis and growth)";
    BENSON_KRAUSE_1984 = "Benson & Krause 1984", "Benson & Krause 1984, Limnol. Oceanogr. 29:620, as printed in Standard Methods 4500-O";
    COLE_CARACO_1998 = "Cole & Caraco 1998", "Cole & Caraco 1998, Limnol. Oceanogr. 43:647";
    DAVIES_1962 = "Davies 1962", "Davies 1962, Ion Association (activity coefficients)";
    DUARTE_1992 = "Duarte 1992", "Duarte 1992, Limnol. Oceanogr. 37:882";
    ECOSIM = "ecosim", "R package ecosim, demonstration parameters of a river model";
    EMERSON_1975 = "Emerson 1975", "Emerson et al. 1975, J. Fish. Res. Board Can. 32:2379";
    ENRIQUEZ_1993 = "Enriquez 1993", "Enríquez, Duarte & Sand-Jensen 1993, Oecologia 94:457";
    EPA_2013 = "EPA 2013", "US EPA 2013, Aquatic life ambient water quality criteria for ammonia, EPA-822-R-13-001";
    GERLOFF_1966 = "Gerloff & Krombholz 1966", "Gerloff & Krombholz 1966, Limnol. Oceanogr. 11:529";
    GUISASOLA_2007 = "Guisasola 2007", "Guisasola et al. 2007 (inorganic carbon limitation of nitrifiers)";
    HIATT_GRADY_2008 = "Hiatt & Grady 2008", "Hiatt & Grady 2008, Water Environ. Res. 80:2145 (ASMN)";
    HOLMEN_LISS_1984 = "Holmén & Liss 1984", "Holmén & Liss 1984, Tellus 36B:92 (transfer velocity and diffusivity)";
    KITS_2017 = "Kits 2017", "Kits et al. 2017, Nature 549:269";
    LUCAS_PRIEDE_1992 = "Lucas & Priede 1992", "Lucas & Priede 1992, J. Fish Biol. 41:173";
    MALONE_PFEIFFER_2006 = "Malone & Pfeiffer 2006", "Malone & Pfeiffer 2006, Aquac. Eng. 34:389";
    PLUMMER_BUSENBERG_1982 = "Plummer & Busenberg 1982", "Plummer & Busenberg 1982, Geochim. Cosmochim. Acta 46:1011";
    SIN_2008 = "Sin 2008", "Sin et al. 2008, Water Sci. Technol. 58:1155";
    SMITH_1998 = "Smith 1998", "Smith, Löf & Jones 1998, ASHRAE Trans. 104 (evaporation from indoor pools)";
    SOIL_SCIENCE_1983 = "Soil Science 1983", "Nitrogen and phosphorus fluxes from a flooded organic soil, Soil Science 136(5):300, 1983";
    TIMMONS_EBELING = "Timmons & Ebeling", "Timmons & Ebeling, Recirculating Aquaculture";
    USHIKI_2017 = "Ushiki 2017", "Ushiki et al. 2017, J. Biosci. Bioeng. 123:581";
    VAN_1976 = "Van 1976", "Van, Haller & Bowes 1976, Plant Physiol. 58:761";
    VANNECKE_VOLCKE = "Vannecke & Volcke", "Vannecke & Volcke, biofilm model supplement";
    VERAART_2011 = "Veraart 2011", "Veraart et al. 2011, Biogeochemistry 104:267";
    WANNINKHOF_2014 = "Wanninkhof 2014", "Wanninkhof 2014, Limnol. Oceanogr. Methods 12:351";
    WOLF_GLADROW_2007 = "Wolf-Gladrow 2007", "Wolf-Gladrow et al. 2007, Mar. Chem. 106:287";
}
