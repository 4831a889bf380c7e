//! The units that learners and lesson files write.
//!
//! Factors: NIST SP 811 (2008), appendix B; exact where the definition is exact
//! (1 kgf = 9.806 65 N, 1 lbf = 0.453 592 37 kg × 9.806 65 m/s², 1 in = 0.0254 m).

use super::{Dimension, figures_text};

/// One unit: how it is written, its dimension, and its factor to the SI unit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Unit {
    /// The symbol as this program writes it.
    pub symbol: &'static str,
    /// Other spellings that are read as this unit.
    pub spellings: &'static [&'static str],
    /// The dimension of a quantity in this unit.
    pub dimension: Dimension,
    /// SI value of one of this unit (radians for angles).
    pub factor: f64,
}

const fn unit(
    symbol: &'static str,
    spellings: &'static [&'static str],
    dimension: Dimension,
    factor: f64,
) -> Unit {
    Unit {
        symbol,
        spellings,
        dimension,
        factor,
    }
}

/// Every unit that is read. The first of a dimension is the one that values are told in.
const UNITS: &[Unit] = &[
    unit(
        "N",
        &[
            "newton",
            "newtons",
            "kg m/s^2",
            "kg·m/s^2",
            "kg*m/s^2",
            "kg m/s²",
            "kg·m/s²",
            "kg m s^-2",
            "kg m s⁻²",
            "kg·m·s^-2",
            "kg·m·s⁻²",
        ],
        Dimension::FORCE,
        1.0,
    ),
    unit(
        "kN",
        &["kilonewton", "kilonewtons"],
        Dimension::FORCE,
        1000.0,
    ),
    unit("kgf", &["kp"], Dimension::FORCE, 9.806_65),
    unit("lbf", &[], Dimension::FORCE, 4.448_221_615_260_5),
    unit("daN", &[], Dimension::FORCE, 10.0),
    unit(
        "N m",
        &["Nm", "N·m", "N.m", "N*m", "N⋅m", "N-m"],
        Dimension::MOMENT,
        1.0,
    ),
    unit(
        "kN m",
        &["kNm", "kN·m", "kN.m", "kN*m", "kN⋅m", "kN-m"],
        Dimension::MOMENT,
        1000.0,
    ),
    unit("kgf m", &["kgf·m"], Dimension::MOMENT, 9.806_65),
    unit("kgf cm", &["kgf·cm"], Dimension::MOMENT, 0.098_066_5),
    unit(
        "N cm",
        &["Ncm", "N·cm", "N.cm", "N*cm", "N⋅cm"],
        Dimension::MOMENT,
        0.01,
    ),
    unit("N²", &["N^2"], Dimension::FORCE_SQUARED, 1.0),
    unit("kN²", &["kN^2"], Dimension::FORCE_SQUARED, 1e6),
    unit("N/m", &["N m^-1", "N m⁻¹"], Dimension::FORCE_A_LENGTH, 1.0),
    unit(
        "kN/m",
        &["kN m^-1", "kN m⁻¹"],
        Dimension::FORCE_A_LENGTH,
        1000.0,
    ),
    unit(
        "kg",
        &["kilogram", "kilograms", "kilo", "kilos"],
        Dimension::MASS,
        1.0,
    ),
    unit("g", &["gram", "grams"], Dimension::MASS, 0.001),
    unit("t", &["tonne", "tonnes"], Dimension::MASS, 1000.0),
    unit(
        "m",
        &["metre", "metres", "meter", "meters"],
        Dimension::LENGTH,
        1.0,
    ),
    unit(
        "cm",
        &["centimetre", "centimetres", "centimeter", "centimeters"],
        Dimension::LENGTH,
        0.01,
    ),
    unit(
        "mm",
        &["millimetre", "millimetres", "millimeter", "millimeters"],
        Dimension::LENGTH,
        0.001,
    ),
    unit("m²", &["m^2"], Dimension::AREA, 1.0),
    unit("cm²", &["cm^2"], Dimension::AREA, 0.000_1),
    unit("mm²", &["mm^2"], Dimension::AREA, 0.000_001),
    unit("m³", &["m^3"], Dimension::VOLUME, 1.0),
    unit("cm³", &["cm^3"], Dimension::VOLUME, 0.000_001),
    unit("mm³", &["mm^3"], Dimension::VOLUME, 0.000_000_001),
    unit(
        "kg/m²",
        &["kg/m^2", "kg/m2", "kg m^-2", "kg m⁻²"],
        Dimension::MASS_PER_AREA,
        1.0,
    ),
    unit(
        "°",
        &["deg", "degree", "degrees", "º"],
        Dimension::ANGLE,
        std::f64::consts::PI / 180.0,
    ),
    unit("rad", &["radian", "radians"], Dimension::ANGLE, 1.0),
    unit(
        "m/s²",
        &["m/s^2", "m/s2", "m s^-2", "m s⁻²", "ms^-2", "ms⁻²", "N/kg"],
        Dimension::ACCELERATION,
        1.0,
    ),
];

/// The unit with this symbol or spelling, if it is known. Case counts, as the SI asks.
pub fn find_unit(spelling: &str) -> Option<&'static Unit> {
    UNITS
        .iter()
        .find(|unit| unit.symbol == spelling || unit.spellings.contains(&spelling))
}

/// The unit in which values of a dimension are told; `None` for a pure number or a dimension
/// that statics has no name for.
pub fn unit_for(dimension: Dimension) -> Option<&'static Unit> {
    UNITS.iter().find(|unit| unit.dimension == dimension)
}

/// A number as it is printed: with the sign of subtraction before it, not a hyphen.
pub fn with_minus(text: &str) -> String {
    match text.strip_prefix('-') {
        Some(size) => format!("−{size}"),
        None => text.to_owned(),
    }
}

/// A value with its unit at so many figures: `96.3 N`, `35.0°`, `−102 N m`.
pub fn value_text(value: f64, dimension: Dimension, figures: u8) -> String {
    match unit_for(dimension) {
        None => with_minus(&figures_text(value, figures)),
        Some(unit) => {
            let gap = if unit.symbol == "°" { "" } else { " " };
            let number = with_minus(&figures_text(value / unit.factor, figures));
            format!("{number}{gap}{}", unit.symbol)
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn val_factors_agree_with_sp_811() {
        // NIST SP 811 appendix B: lbf = 4.448 222 E+00 N, kgf = 9.806 65 E+00 N.
        let factor = |name: &str| find_unit(name).map(|unit| unit.factor);
        assert!((factor("lbf").unwrap_or(0.0) - 4.448_222).abs() < 5e-7);
        assert_eq!(factor("kgf"), Some(9.806_65));
    }

    #[test]
    fn values_carry_their_unit() {
        assert_eq!(value_text(96.332, Dimension::FORCE, 3), "96.3 N");
        assert_eq!(
            value_text(std::f64::consts::FRAC_PI_4, Dimension::ANGLE, 3),
            "45.0°"
        );
        assert_eq!(value_text(0.5, Dimension::NUMBER, 2), "0.50");
        assert_eq!(value_text(-349.0, Dimension::FORCE, 3), "−349 N");
        assert_eq!(value_text(150.0, Dimension::FORCE_A_LENGTH, 3), "150 N/m");
    }
}
