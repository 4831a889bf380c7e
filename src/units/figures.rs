//! A number as somebody wrote it: how many figures, and what one unit in its last place is worth.

/// How finely a number was written.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Written {
    /// Significant figures shown: 3 for `96.3` and for `0.0963`, 4 for `96.30`, 3 for `120`.
    pub significant: u8,
    /// The worth of one unit in the last written place, in SI units of the quantity
    /// (0.1 for `96.3 N`, 100 for `1.5 kN` written in newtons).
    pub last_place: f64,
}

impl Written {
    /// Reads the figures from the digits of a plain or `e` number such as `96.30` or `1.2e3`.
    ///
    /// `scale` is the factor from the written unit to SI.
    pub fn of_digits(digits: &str, scale: f64) -> Written {
        let (mantissa, exponent) = match digits.split_once(['e', 'E']) {
            Some((mantissa, exponent)) => (mantissa, exponent.parse::<i32>().unwrap_or(0)),
            None => (digits, 0),
        };
        let decimals = mantissa.split_once('.').map_or(0, |(_, after)| after.len());
        let shown: String = mantissa.chars().filter(char::is_ascii_digit).collect();
        let significant = shown.trim_start_matches('0').len().clamp(1, 250);
        let power = exponent.saturating_sub(decimals as i32).clamp(-300, 300);
        Written {
            significant: significant as u8,
            last_place: libm::pow(10.0, f64::from(power)) * scale.abs(),
        }
    }
}

/// A value to so many significant figures, half away from zero.
pub fn to_figures(value: f64, figures: u8) -> f64 {
    if value == 0.0 || !value.is_finite() {
        return value;
    }
    let place = unit_of_figure(value, figures);
    libm::round(value / place) * place
}

/// What one unit of a value's figure counts, the first figure being 1; the value must not be zero.
pub fn unit_of_figure(value: f64, figure: u8) -> f64 {
    let first = libm::floor(libm::log10(value.abs()));
    libm::pow(10.0, first + 1.0 - f64::from(figure))
}

/// What sums and products of exact numbers lose at the most, as a share.
const DUST: f64 = 1e-12;

/// A number to so many significant figures, without exponent where it can be read without.
///
/// ```
/// use leverwright::units::figures_text;
/// assert_eq!(figures_text(96.332, 3), "96.3");
/// assert_eq!(figures_text(0.081915, 3), "0.0819");
/// assert_eq!(figures_text(1204.3, 3), "1200");
/// assert_eq!(figures_text(490.5, 3), "491");
/// ```
pub fn figures_text(value: f64, figures: u8) -> String {
    if !value.is_finite() {
        return "undefined".to_owned();
    }
    if value == 0.0 {
        return "0".to_owned();
    }
    // Halves round away from zero, as a calculator does, whatever dust is on them.
    let value = value * (1.0 + DUST);
    let figures = i32::from(figures.max(1));
    let magnitude = libm::floor(libm::log10(value.abs())) as i32;
    if !(-5..=8).contains(&magnitude) {
        return format!("{value:.*e}", (figures - 1) as usize);
    }
    let decimals = figures - 1 - magnitude;
    if decimals >= 0 {
        let text = format!("{value:.*}", decimals as usize);
        // 9.996 to three figures grows a place and would show four.
        let grown = text
            .trim_start_matches(['-', '0', '.'])
            .chars()
            .filter(char::is_ascii_digit)
            .count() as i32;
        if grown > figures && decimals > 0 {
            return format!("{value:.*}", (decimals - 1) as usize);
        }
        return text;
    }
    let unit = libm::pow(10.0, f64::from(-decimals));
    format!("{:.0}", libm::round(value / unit) * unit)
}

/// A given's number, with no more digits than it has (12, 0.8, 2.45).
pub fn number_text(value: f64) -> String {
    let rounded = format!("{value:.6}");
    let trimmed = rounded.trim_end_matches('0').trim_end_matches('.');
    if trimmed == "-0" {
        "0".to_owned()
    } else {
        trimmed.to_owned()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn figures_are_counted_as_written() {
        for (digits, significant, last_place) in [
            ("96.3", 3, 0.1),
            ("96.30", 4, 0.01),
            ("120", 3, 1.0),
            ("0.0963", 3, 0.0001),
            ("1.2e3", 2, 100.0),
        ] {
            let written = Written::of_digits(digits, 1.0);
            assert_eq!(written.significant, significant, "{digits}");
            assert!(
                (written.last_place / last_place - 1.0).abs() < 1e-9,
                "{digits}"
            );
        }
    }

    #[test]
    fn values_are_told_to_the_figures_asked() {
        for (value, figures, text) in [
            (96.332, 3, "96.3"),
            (9.996, 3, "10.0"),
            (99.96, 3, "100"),
            (999.6, 3, "1000"),
            (-0.5, 3, "-0.500"),
            (1234.5, 3, "1230"),
            (1.0e12, 3, "1.00e12"),
        ] {
            assert_eq!(figures_text(value, figures), text);
        }
    }
}
