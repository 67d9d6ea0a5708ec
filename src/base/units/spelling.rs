//! Ways of writing one and the same unit, brought to one plain form before they are compared.

/// The plain form of a unit: one sign for micro, litre, powers and spaces, short words for times.
///
/// `mg/L NO3`, `mg/l as NO3` and `ppm NO3` become `mg NO3/L`.
pub fn plain(text: &str) -> String {
    let text = signs(text);
    let text = text.replace(" per ", "/").replace(" / ", "/");
    let text = text
        .strip_prefix("per ")
        .map_or(text.clone(), |rest| format!("/{rest}"));
    let text = text
        .strip_prefix("1/")
        .map_or(text.clone(), |rest| format!("/{rest}"));
    let words: Vec<String> = text
        .split('/')
        .map(|part| {
            let words: Vec<&str> = part.split_whitespace().map(word).collect();
            words.join(" ")
        })
        .collect();
    substance_first(&words.join("/"))
}

/// One sign for each thing.
fn signs(text: &str) -> String {
    let mut plain = String::new();
    for sign in text.trim().chars() {
        match sign {
            'μ' => plain.push('µ'),
            'º' | '˚' => plain.push('°'),
            '₀'..='₉' => plain.push(char::from(b'0' + (sign as u32 - '₀' as u32) as u8)),
            '·' | '*' => plain.push(' '),
            '\u{a0}' | '\u{202f}' => plain.push(' '),
            other => plain.push(other),
        }
    }
    plain
        .replace("^2", "²")
        .replace("^3", "³")
        .replace("m2", "m²")
        .replace("m3", "m³")
        .replace("day⁻¹", "/day")
        .replace("day^-1", "/day")
        .replace("d⁻¹", "/d")
        .replace("h⁻¹", "/h")
}

/// One word for each thing.
fn word(word: &str) -> &str {
    match word {
        "l" | "ltr" | "liter" | "liters" | "litre" | "litres" => "L",
        "ml" | "millilitres" | "milliliters" => "mL",
        "d" | "days" => "day",
        "hr" | "hrs" | "hour" | "hours" => "h",
        "mins" | "minute" | "minutes" => "min",
        "sec" | "second" | "seconds" => "s",
        "umol" => "µmol",
        "ug" => "µg",
        "bubble" => "bubbles",
        other => other,
    }
}

/// `mg/L NO3` and `ppm NO3` as `mg NO3/L`.
fn substance_first(text: &str) -> String {
    for start in ["mg/L ", "ppm "] {
        if let Some(substance) = text.strip_prefix(start) {
            let substance = substance.strip_prefix("as ").unwrap_or(substance);
            return format!("mg {substance}/L");
        }
    }
    text.to_string()
}

#[cfg(test)]
mod tests {
    use super::plain;

    #[test]
    fn ways_of_writing_one_unit_are_the_same() {
        assert_eq!(plain("mg/l as NO₃"), "mg NO3/L");
        assert_eq!(plain("ppm NO3"), plain("mg/L NO3"));
        assert_eq!(plain("μmol/m^2/s"), "µmol/m²/s");
        assert_eq!(plain("umol/m2/sec"), "µmol/m²/s");
        assert_eq!(plain("d⁻¹"), "/day");
        assert_eq!(plain("per day"), "/day");
        assert_eq!(plain("1/d"), "/day");
        assert_eq!(plain("L/hr"), "L/h");
        assert_eq!(plain("L / h per l/min"), "L/h/L/min");
    }
}
