//! Slips of the pen and of the keys: the right number, nearly.

use crate::judge::Typed;
use crate::units::Dimension;

/// The pseudo-count of two neighbouring digits exchanged, beside the priors of the mistakes (common
/// practice, no source).
const EXCHANGED: f64 = 2.5;
/// The same for a power of ten: a kilonewton for a newton, a point in the wrong place.
const POWER_OF_TEN: f64 = 6.0;
/// The same for one digit that is another: each of some 27 neighbours is likelier by chance.
const ONE_DIGIT: f64 = 0.7;

/// The weight of the thought that `typed` is `right` with a slip of the pen.
pub(super) fn weight(typed: Typed, right: f64) -> f64 {
    if typed.value == 0.0 || right == 0.0 || !right.is_finite() {
        return 0.0;
    }
    let figures = typed.written.significant.clamp(2, 6);
    let (Some((digits, power)), Some((wanted, wanted_power))) =
        (digits(typed.value, figures), digits(right, figures))
    else {
        return 0.0;
    };
    if digits == wanted {
        return if power == wanted_power {
            0.0
        } else {
            POWER_OF_TEN
        };
    }
    if power != wanted_power || typed.value * right < 0.0 {
        return 0.0;
    }
    let apart: Vec<usize> = (0..digits.len())
        .filter(|at| digits[*at] != wanted[*at])
        .collect();
    match apart.as_slice() {
        [one, other]
            if other - one == 1
                && digits[*one] == wanted[*other]
                && digits[*other] == wanted[*one] =>
        {
            EXCHANGED
        }
        // Of two figures too many numbers are one digit away.
        [_] if figures >= 3 => ONE_DIGIT,
        _ => 0.0,
    }
}

/// The first significant digits of a number, rounded, and its power of ten.
fn digits(value: f64, figures: u8) -> Option<(Vec<u8>, i32)> {
    let text = format!("{:.*e}", usize::from(figures) - 1, value.abs());
    let (mantissa, power) = text.split_once('e')?;
    let digits = mantissa.bytes().filter(u8::is_ascii_digit).collect();
    Some((digits, power.parse().ok()?))
}

/// The number in the unit in which it is told: angles in degrees.
pub(super) fn told(typed: Typed, right: f64, dimension: Dimension) -> (Typed, f64) {
    if dimension == Dimension::ANGLE {
        let mut typed = typed;
        typed.value = typed.value.to_degrees();
        typed.written.last_place = typed.written.last_place.to_degrees();
        return (typed, right.to_degrees());
    }
    (typed, right)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::Written;

    #[test]
    fn slips_are_weighed() {
        // Hand-made: the right value is 384.97.
        for (value, weighed) in [
            (385.0, 0.0),
            (358.0, EXCHANGED),
            (38.5, POWER_OF_TEN),
            (3850.0, POWER_OF_TEN),
            (835.0, EXCHANGED),
            (388.0, ONE_DIGIT),
            (285.0, ONE_DIGIT),
            (277.0, 0.0),
            (-358.0, 0.0),
            (0.0, 0.0),
        ] {
            let typed = Typed {
                value,
                written: Written {
                    significant: 3,
                    last_place: 1.0,
                },
            };
            assert_eq!(weight(typed, 384.97), weighed, "{value}");
        }
    }
}
