//! Six digits of a number by one multiplication.

/// Powers of ten that are exact as `f64`: a product or quotient with one of them is off by half a
/// unit in its last place at most.
const POWERS: [f64; 23] = [
    1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16,
    1e17, 1e18, 1e19, 1e20, 1e21, 1e22,
];
/// Digits that are kept.
const KEPT: usize = 6;
/// The least whole number with so many digits.
const LEAST: u32 = 100_000;
/// The least whole number with one digit more.
const TOO_LARGE: u32 = 1_000_000;
/// Nearer than this to the middle between two whole numbers, a scaled number is not trusted: half
/// a unit in the last place of a million is 6e-11.
const UNSURE: f64 = 1e-9;

/// A number: the sign, and `0.digits · 10^point` with six digits, or zero.
pub struct Digits {
    negative: bool,
    digits: u32,
    point: i32,
}

/// The digits of a number, unless it takes its exact value to tell them.
pub fn of(value: f64) -> Option<Digits> {
    let size = value.abs();
    if size == 0.0 {
        return Some(Digits {
            negative: false,
            digits: 0,
            point: 1,
        });
    }
    let (scaled, mut point) = scaled(size)?;
    if !(f64::from(LEAST)..f64::from(TOO_LARGE)).contains(&scaled) {
        return None;
    }
    let mut digits = scaled as u32;
    let past_middle = scaled - f64::from(digits) - 0.5;
    if past_middle.abs() < UNSURE {
        return None;
    }
    digits += u32::from(past_middle > 0.0);
    if digits == TOO_LARGE {
        (digits, point) = (LEAST, point + 1);
    }
    Some(Digits {
        negative: value < 0.0,
        digits,
        point,
    })
}

/// A size moved to six digits before its point, and where its own point was.
fn scaled(size: f64) -> Option<(f64, i32)> {
    // the exponent of two times lg 2 is the exponent of ten, or one less
    let two = (size.to_bits() >> 52) as i32 - 1023;
    let point = 1 + ((two * 1233) >> 12);
    let first = by_power_of_ten(size, KEPT as i32 - point)?;
    if first < f64::from(TOO_LARGE) {
        return Some((first, point));
    }
    let next = by_power_of_ten(size, KEPT as i32 - point - 1)?;
    Some((next, point + 1))
}

fn by_power_of_ten(size: f64, power: i32) -> Option<f64> {
    let ten = POWERS.get(power.unsigned_abs() as usize)?;
    Some(if power < 0 { size / ten } else { size * ten })
}

impl Digits {
    /// Appends the number, without idle zeros.
    pub fn push(&self, text: &mut String) {
        if self.digits == 0 {
            text.push('0');
            return;
        }
        if self.negative {
            text.push('-');
        }
        let room = self.figures();
        let ascii = std::str::from_utf8(&room).expect("figures are ASCII");
        self.place(text, ascii.trim_end_matches('0'));
    }

    /// The six figures, two by two.
    fn figures(&self) -> [u8; KEPT] {
        let pair = |two: u32| [b'0' + (two / 10) as u8, b'0' + (two % 10) as u8];
        let [a, b] = pair(self.digits / 10_000);
        let [c, d] = pair(self.digits / 100 % 100);
        let [e, f] = pair(self.digits % 100);
        [a, b, c, d, e, f]
    }

    /// Appends the digits with the point where it belongs: as a plain number from a millionth up
    /// to fifteen figures, else with an exponent.
    fn place(&self, text: &mut String, digits: &str) {
        match self.point {
            // the range is that of the zeros written here
            point @ -5..=0 => {
                text.push_str(&"0.00000"[..2 + point.unsigned_abs() as usize]);
                text.push_str(digits);
            }
            point @ 1..=15 => with_point(text, digits, point as usize),
            point => {
                with_point(text, digits, 1);
                text.push_str(&format!("e{}", point - 1));
            }
        }
    }
}

/// Appends digits with so many of them before the point; zeros where there are fewer.
fn with_point(text: &mut String, digits: &str, before: usize) {
    if digits.len() <= before {
        text.push_str(digits);
        text.extend(std::iter::repeat_n('0', before - digits.len()));
    } else {
        let (whole, rest) = digits.split_at(before);
        text.push_str(whole);
        text.push('.');
        text.push_str(rest);
    }
}
