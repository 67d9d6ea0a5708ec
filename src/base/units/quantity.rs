//! From a text such as `"10 mg NO3/L"` to a number in the base unit of a kind.

use super::{Kind, Unclear, Unit, all_kinds, spelling};

/// Why a text is not a quantity of the kind that is needed.
#[derive(Debug, Clone)]
pub enum Refusal {
    /// Nothing written.
    Empty,
    /// The text does not begin with a number.
    NoNumber,
    /// The number is written with a decimal comma.
    Comma {
        /// The same text with a point.
        with_point: String,
    },
    /// The text is a range `a..b`.
    Band,
    /// A number without a unit.
    NoUnit {
        /// The number as written.
        number: String,
    },
    /// A unit nobody knows.
    Unknown {
        /// The number as written.
        number: String,
        /// The unit as written.
        unit: String,
        /// The unit of the kind that is spelled most alike, if one is.
        closest: Option<&'static str>,
    },
    /// A unit of another kind.
    OtherKind {
        /// The unit as written.
        unit: String,
        /// What it is a unit of, with its article.
        other: &'static str,
    },
    /// A unit that could mean several things.
    Unclear {
        /// The number as written.
        number: String,
        /// The unit as written.
        unit: String,
        /// What it leaves open.
        open: &'static str,
        /// What could be meant, and what each would be.
        readings: Vec<(&'static str, f64)>,
        /// The unit in which the answers are given.
        shown_in: &'static str,
    },
}

/// A text split into a number and the rest.
pub struct Split<'a> {
    /// The number as written.
    pub digits: &'a str,
    /// Its value.
    pub number: f64,
    /// What follows it, without spaces around.
    pub unit: &'a str,
}

/// Reads a quantity of a kind; the number is in the kind's base unit.
///
/// # Errors
/// When the text is no such quantity; see [`Refusal`].
pub fn read(text: &str, kind: &'static Kind) -> Result<f64, Refusal> {
    let split = split(text)?;
    if split.unit.is_empty() && kind.base().symbol == "1" {
        return Ok(split.number);
    }
    Ok(unit_of(&split, kind)?.to_base(split.number))
}

/// Splits a text into a number and a unit.
///
/// # Errors
/// When it does not begin with one plain number.
pub fn split(text: &str) -> Result<Split<'_>, Refusal> {
    let text = text.trim();
    if text.is_empty() {
        return Err(Refusal::Empty);
    }
    if text.contains("..") {
        return Err(Refusal::Band);
    }
    let end = number_length(text);
    let (digits, rest) = text.split_at(end);
    let number: f64 = digits.parse().map_err(|_| Refusal::NoNumber)?;
    if let Some(after) = rest.strip_prefix(',')
        && after.starts_with(|c: char| c.is_ascii_digit())
    {
        return Err(Refusal::Comma {
            with_point: format!("{digits}.{after}"),
        });
    }
    Ok(Split {
        digits,
        number,
        unit: rest.trim(),
    })
}

/// The two ends of a text `a..b unit`, each with a unit of its own; none when it is no range. The first
/// end takes the unit of the second unless it has one.
pub fn ends(text: &str) -> Option<(String, String)> {
    let (first, last) = text.split_once("..")?;
    let (first, last) = (first.trim(), last.trim());
    let unit = split(last).map_or("", |split| split.unit);
    let is_bare = split(first).is_ok_and(|split| split.unit.is_empty());
    let first = if is_bare && !unit.is_empty() {
        format!("{first} {unit}")
    } else {
        first.to_string()
    };
    Some((first, last.to_string()))
}

/// How many bytes at the start of a text are a number.
fn number_length(text: &str) -> usize {
    let bytes = text.as_bytes();
    let digits_from = |mut at: usize| {
        while at < bytes.len() && bytes[at].is_ascii_digit() {
            at += 1;
        }
        at
    };
    let sign = usize::from(matches!(bytes.first(), Some(b'+' | b'-')));
    let mut end = digits_from(sign);
    if bytes.get(end) == Some(&b'.') {
        end = digits_from(end + 1);
    }
    if matches!(bytes.get(end), Some(b'e' | b'E')) {
        let signed = end + 1 + usize::from(matches!(bytes.get(end + 1), Some(b'+' | b'-')));
        let exponent = digits_from(signed);
        if exponent > signed {
            end = exponent;
        }
    }
    end
}

/// The unit of a split text.
fn unit_of(split: &Split<'_>, kind: &'static Kind) -> Result<&'static Unit, Refusal> {
    if split.unit.is_empty() {
        return Err(Refusal::NoUnit {
            number: split.digits.to_string(),
        });
    }
    if let Some(unit) = kind.spelled(split.unit) {
        return Ok(unit);
    }
    if let Some(unclear) = kind.unclear_spelling(split.unit) {
        return Err(readings(split, kind, unclear));
    }
    Err(match other_kind(split.unit) {
        Some(other) => Refusal::OtherKind {
            unit: split.unit.to_string(),
            other: other.name,
        },
        None => Refusal::Unknown {
            number: split.digits.to_string(),
            unit: split.unit.to_string(),
            closest: closest(split.unit, kind),
        },
    })
}

/// A kind that has this unit; concentrations before those of one substance.
fn other_kind(unit: &str) -> Option<&'static Kind> {
    let has = |kind: &&'static Kind| kind.spelled(unit).is_some();
    let unclear = |kind: &&'static Kind| kind.unclear_spelling(unit).is_some();
    let plain = spelling::plain(unit);
    let general = |kind: &&'static Kind| kind.name.starts_with("a concentration");
    super::rates::KINDS
        .iter()
        .copied()
        .filter(general)
        .find(|kind| kind.unit(&plain).is_some())
        .or_else(|| all_kinds().find(has))
        .or_else(|| all_kinds().find(unclear))
}

/// What an unclear unit could mean, and how far apart the answers are.
fn readings(split: &Split<'_>, kind: &'static Kind, unclear: &Unclear) -> Refusal {
    let meant = unclear.meant.iter().filter_map(|symbol| kind.unit(symbol));
    let units: Vec<&'static Unit> = meant.collect();
    let shown = kind.unit(unclear.shown_in).unwrap_or(kind.base());
    Refusal::Unclear {
        number: split.digits.to_string(),
        unit: split.unit.to_string(),
        open: unclear.open,
        readings: units
            .iter()
            .map(|unit| (unit.symbol, shown.from_base(unit.to_base(split.number))))
            .collect(),
        shown_in: shown.symbol,
    }
}

/// The unit of a kind that is spelled most like a text.
fn closest(text: &str, kind: &Kind) -> Option<&'static str> {
    let wanted = spelling::plain(text).to_lowercase();
    let allowed = (wanted.chars().count() / 3).max(1);
    kind.units
        .iter()
        .flat_map(|unit| {
            let spelled = unit.spellings.iter().chain([&unit.symbol]);
            spelled.map(|s| (spelling::plain(s).to_lowercase(), unit.symbol))
        })
        .map(|(spelled, symbol)| (strsim::damerau_levenshtein(&spelled, &wanted), symbol))
        .filter(|(distance, _)| *distance <= allowed)
        .min_by_key(|(distance, _)| *distance)
        .map(|(_, symbol)| symbol)
}

#[cfg(test)]
mod tests {
    use super::super::everyday::*;
    use super::*;

    fn is(text: &str, kind: &'static Kind, wanted: f64, tolerance: f64) {
        let got = read(text, kind).unwrap_or_else(|e| panic!("{text}: {e:?}"));
        assert!((got - wanted).abs() <= tolerance, "{text}: {got}");
    }

    #[test]
    fn everyday_spellings_are_understood() {
        is("60cm", &LENGTH, 0.6, 1e-15);
        is("14 US gal", &VOLUME, 52.995764976, 1e-9); // exact by definition of the gallon
        is("76 °F", &TEMPERATURE, 24.444444, 1e-6);
        is("2.4 g/day", &GAS_PER_DAY, 2400.0, 0.0);
        is("80 umol/m^2/s", &LIGHT, 80.0, 0.0);
        is("1.2 l/min", &FLOW, 1.2, 0.0);
        is("50 %", &SHARE, 0.5, 0.0);
        is("12 h", &DURATION, 0.5, 0.0);
        is("2 weeks", &DURATION, 14.0, 0.0);
        is("1e-3 L", &VOLUME, 1e-3, 0.0);
    }

    #[test]
    fn a_range_has_two_ends_of_one_unit() {
        let ends_of = |text| ends(text).unwrap();
        let (first, last) = ends_of("3..4.5 dKH");
        assert_eq!((first.as_str(), last.as_str()), ("3 dKH", "4.5 dKH"));
        assert_eq!(ends_of("3 .. 4dKH").0, "3 dKH");
        assert_eq!(ends_of("60 °F..24 °C").0, "60 °F");
        assert_eq!(ends("4 dKH"), None);
    }

    #[test]
    fn nitrogen_scales_agree_with_the_atomic_masses() {
        // tolerance: the printed digits of the usual factors 4.4266, 3.2844, 1.2879, 1.2159
        is("4.4266 mg NO3/L", &NITRATE, 1.0, 1e-4);
        is("3.2844 mg NO2/L", &NITRITE, 1.0, 1e-4);
        is("1.2879 mg NH4/L", &AMMONIA, 1.0, 1e-4);
        is("1.2159 mg NH3/L", &AMMONIA, 1.0, 1e-4);
        is("3.0661 mg PO4/L", &PHOSPHATE, 1.0, 1e-4);
        is("1.2046 mg K2O/L", &POTASSIUM, 1.0, 1e-4);
    }

    #[test]
    fn hardness_scales_agree_with_each_other() {
        // tolerance: the printed digits of the usual factors
        for text in [
            "2.8039 dKH",
            "50.043 mg CaCO3/L",
            "5.0043 °fH",
            "61.016 mg HCO3/L",
        ] {
            is(text, &ALKALINITY, 1.0, 3e-4);
        }
        is("1 °Clark", &ALKALINITY, 0.28483, 1e-5);
        is("1 gr/US gal", &ALKALINITY, 0.34207, 1e-5);
        is("1 mmol/L", &HARDNESS, 2.0, 0.0);
        is("5.608 dGH", &HARDNESS, 2.0, 2e-4);
    }

    #[test]
    fn five_ppm_of_nitrite_span_5_0_to_16_4() {
        let Err(Refusal::Unclear { readings, .. }) = read("5 ppm", &NITRITE) else {
            panic!("ppm alone must be refused");
        };
        let shown: Vec<String> = readings.iter().map(|(_, v)| format!("{v:.1}")).collect();
        assert_eq!(shown, ["16.4", "5.0"]);
    }

    #[test]
    fn commas_bands_and_bare_numbers_are_told_apart() {
        assert!(
            matches!(read("3,5 cm", &LENGTH), Err(Refusal::Comma { with_point }) if with_point == "3.5 cm")
        );
        assert!(matches!(read("3..5 cm", &LENGTH), Err(Refusal::Band)));
        assert!(matches!(read("35", &LENGTH), Err(Refusal::NoUnit { .. })));
        assert!(matches!(read("½ L", &VOLUME), Err(Refusal::NoNumber)));
        assert!(matches!(
            read("5 kg", &VOLUME),
            Err(Refusal::OtherKind {
                other: "a mass",
                ..
            })
        ));
        assert!(matches!(
            read("5 CM", &LENGTH),
            Err(Refusal::Unknown {
                closest: Some("cm"),
                ..
            })
        ));
    }
}
