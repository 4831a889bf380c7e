//! What learners type, and how it is read.

use leverwright::reading::{Leaf, Name, NameId, Reading, Value, Vocabulary, evaluate, read};
use leverwright::text::Symbol;
use leverwright::units::{Dimension, unit_for};
use proptest::prelude::*;

/// The names of a tilted beam held by a rope, and values for them that tests use.
fn names() -> Vec<(Name, f64)> {
    let name = |symbol: &str, dimension, value: f64, spellings: &[&str]| {
        let spellings = spellings.iter().map(|text| (*text).to_owned()).collect();
        let symbol = Symbol::new(symbol);
        let name = Name {
            symbol,
            dimension,
            spellings,
        };
        (name, value)
    };
    let degrees = |angle: f64| angle.to_radians();
    vec![
        name("m", Dimension::MASS, 12.0, &["m_b"]),
        name("g", Dimension::ACCELERATION, 9.8, &[]),
        name(
            "W_b",
            Dimension::FORCE,
            117.6,
            &["weight of the beam", "weight"],
        ),
        name("W_b⊥", Dimension::FORCE, 96.3, &["W_bp"]),
        name("W_1", Dimension::FORCE, 78.4, &[]),
        name("W_1⊥", Dimension::FORCE, 64.2, &["W_1p"]),
        name("L", Dimension::LENGTH, 3.2, &[]),
        name("d_1", Dimension::LENGTH, 1.6, &[]),
        name("d_T", Dimension::LENGTH, 2.4, &[]),
        name("θ", Dimension::ANGLE, degrees(35.0), &[]),
        name("γ", Dimension::ANGLE, degrees(55.0), &[]),
        name("T", Dimension::FORCE, 171.0, &["tension"]),
        name("H_x", Dimension::FORCE, 80.0, &[]),
        name("H_y", Dimension::FORCE, 60.0, &[]),
    ]
}

fn vocabulary() -> Vocabulary {
    Vocabulary {
        names: names().into_iter().map(|(name, _)| name).collect(),
    }
}

fn value_of(names: &[(Name, f64)], leaf: Leaf<'_>) -> Value {
    match leaf {
        Leaf::Literal(literal) => Value::of_literal(literal),
        Leaf::Name(NameId(place)) => Value::of(names[place].1, names[place].0.dimension),
    }
}

/// A line, how its first reading is laid out, and the value and unit of its last side: `bare`
/// where no unit was written, with `?` where a bare factor leaves the dimension uncertain.
type Row = (&'static str, &'static str, f64, &'static str);

/// What a newcomer may type first at "How large is the weight of the beam (12 kg)?"
#[rustfmt::skip]
const FIRST_THINGS: &[Row] = &[
    ("117.6", "117.6", 117.6, "bare"),
    ("117.6 N", "117.6 N", 117.6, "N"),
    ("117.6N", "117.6 N", 117.6, "N"),
    ("118", "118", 118.0, "bare"),
    ("118 N", "118 N", 118.0, "N"),
    ("120 N", "120 N", 120.0, "N"),
    ("117,6 N", "117.6 N", 117.6, "N"),
    ("117.6 newtons", "117.6 N", 117.6, "N"),
    ("117.6 Newton", "117.6 N", 117.6, "N"),
    ("117.6 n", "117.6 N", 117.6, "N"),
    ("about 118 N", "118 N", 118.0, "N"),
    ("it's 117.6 N", "117.6 N", 117.6, "N"),
    ("117.6?", "117.6", 117.6, "bare"),
    ("= 117.6 N", "117.6 N", 117.6, "N"),
    ("12*9.8", "12·9.8", 117.60000000000001, "bare"),
    ("12 * 9.8", "12·9.8", 117.60000000000001, "bare"),
    ("12x9.8", "12·9.8", 117.60000000000001, "bare"),
    ("12 x 9.8", "12·9.8", 117.60000000000001, "bare"),
    ("12 × 9.8", "12·9.8", 117.60000000000001, "bare"),
    ("12·9.8", "12·9.8", 117.60000000000001, "bare"),
    ("12(9.8)", "12·9.8", 117.60000000000001, "bare"),
    ("(12)(9.8)", "12·9.8", 117.60000000000001, "bare"),
    ("12 kg * 9.8", "12 kg·9.8", 117.60000000000001, "kg?"),
    ("12kg*9.8m/s^2", "12 kg·9.8 m/s²", 117.60000000000001, "N"),
    ("12 kg × 9.8 m/s² = 117.6 N", "12 kg·9.8 m/s² = 117.6 N", 117.6, "N"),
    ("12*9.8 N", "12·9.8 N", 117.60000000000001, "N?"),
    ("12*9.8=117.6", "12·9.8 = 117.6", 117.6, "bare"),
    ("12*9.8 = 117.6 N", "12·9.8 = 117.6 N", 117.6, "N"),
    ("12g", "12·g", 117.60000000000001, "m/s²?"),
    ("12 g", "12·g", 117.60000000000001, "m/s²?"),
    ("12 kg g", "(12 kg)·g", 117.60000000000001, "N"),
    ("mg", "m·g", 117.60000000000001, "N"),
    ("m*g", "m·g", 117.60000000000001, "N"),
    ("W = mg", "W = m·g", 117.60000000000001, "N"),
    ("W_b = m g = 117.6 N", "Wb = m·g = 117.6 N", 117.6, "N"),
    ("weight = 117.6", "Wb = 117.6", 117.6, "bare"),
    ("the weight is 117.6 N", "Wb = 117.6 N", 117.6, "N"),
    ("w=12*9.8", "w = 12·9.8", 117.60000000000001, "bare"),
    ("12", "12", 12.0, "bare"),
];

/// Lines in every form that is read.
#[rustfmt::skip]
const LINES: &[Row] = &[
    ("12 kg*9.8 N", "12 kg·9.8 N", 117.60000000000001, "N?"),
    ("(12*9.8) N", "(12·9.8) N", 117.60000000000001, "N?"),
    ("(12*9.8)N", "(12·9.8) N", 117.60000000000001, "N?"),
    ("1,500 N", "1500 N", 1500.0, "N"),
    ("1,500*9,8", "1.500·9.8", 14.700000000000001, "bare"),
    ("12kg*9.8m/s²", "12 kg·9.8 m/s²", 117.60000000000001, "N"),
    ("m g", "m·g", 117.60000000000001, "N"),
    ("Wb = 117.6 N", "Wb = 117.6 N", 117.6, "N"),
    ("wb=117.6", "Wb = 117.6", 117.6, "bare"),
    ("weight of the beam = 117.6N", "Wb = 117.6 N", 117.6, "N"),
    ("so W_b = 117.6", "Wb = 117.6", 117.6, "bare"),
    ("therefore W = 117.6 N", "W = 117.6 N", 117.6, "N"),
    ("Hence, T = 171 N", "T = 171 N", 171.0, "N"),
    ("∴ T = 171 N", "T = 171 N", 171.0, "N"),
    ("=> T = 171 N", "T = 171 N", 171.0, "N"),
    ("Wx = 12*9.8", "Wx = 12·9.8", 117.60000000000001, "bare"),
    ("sin 40", "sin(40°)", 0.6427876096865393, "Dimension { length: 0, mass: 0, time: 0, angle: 0 }"),
    ("sin40", "sin(40°)", 0.6427876096865393, "Dimension { length: 0, mass: 0, time: 0, angle: 0 }"),
    ("sin(40)", "sin(40°)", 0.6427876096865393, "Dimension { length: 0, mass: 0, time: 0, angle: 0 }"),
    ("Sin(40)", "sin(40°)", 0.6427876096865393, "Dimension { length: 0, mass: 0, time: 0, angle: 0 }"),
    ("sin 40°", "sin(40°)", 0.6427876096865393, "Dimension { length: 0, mass: 0, time: 0, angle: 0 }"),
    ("sin θ", "sin(θ)", 0.573576436351046, "Dimension { length: 0, mass: 0, time: 0, angle: 0 }"),
    ("sinθ", "sin(θ)", 0.573576436351046, "Dimension { length: 0, mass: 0, time: 0, angle: 0 }"),
    ("sin theta", "sin(θ)", 0.573576436351046, "Dimension { length: 0, mass: 0, time: 0, angle: 0 }"),
    ("sintheta", "sin(θ)", 0.573576436351046, "Dimension { length: 0, mass: 0, time: 0, angle: 0 }"),
    ("cos(90-35)", "cos(90° − 35°)", 0.573576436351046, "Dimension { length: 0, mass: 0, time: 0, angle: 0 }"),
    ("cos(90 - θ)", "cos(90° − θ)", 0.573576436351046, "Dimension { length: 0, mass: 0, time: 0, angle: 0 }"),
    ("cos 90-35", "cos(90°) − 35", -35.0, "Dimension { length: 0, mass: 0, time: 0, angle: 0 }"),
    ("sin 35 * 2", "sin(35°)·2", 1.147152872702092, "bare"),
    ("sin 2θ", "sin(2·θ)", 0.9396926207859083, "Dimension { length: 0, mass: 0, time: 0, angle: 0 }"),
    ("sin 2 theta", "sin(2·θ)", 0.9396926207859083, "Dimension { length: 0, mass: 0, time: 0, angle: 0 }"),
    ("117.6 cos 35*2", "117.6·cos(35°)·2", 192.66456081677086, "bare"),
    ("sin 35^2", "sin(35°)²", 0.32898992833716556, "Dimension { length: 0, mass: 0, time: 0, angle: 0 }"),
    ("sin^2 35", "sin(35°)²", 0.32898992833716556, "Dimension { length: 0, mass: 0, time: 0, angle: 0 }"),
    ("sin²θ + cos²θ", "sin(θ)² + cos(θ)²", 0.9999999999999999, "Dimension { length: 0, mass: 0, time: 0, angle: 0 }"),
    ("171/2 sin 35", "(171/2)·sin(35°)", 49.040785308014435, "bare"),
    ("tan^-1(60/80)", "tan⁻¹(60/80)", 0.6435011087932844, "°"),
    ("tan^(-1)(60/80)", "tan⁻¹(60/80)", 0.6435011087932844, "°"),
    ("sin⁻¹(0.5)", "sin⁻¹(0.5)", 0.5235987755982989, "°"),
    ("atan(0.75)", "tan⁻¹(0.75)", 0.6435011087932844, "°"),
    ("arctan 0.75", "tan⁻¹(0.75)", 0.6435011087932844, "°"),
    ("arcsin(0.5)", "sin⁻¹(0.5)", 0.5235987755982989, "°"),
    ("acos 0.5", "cos⁻¹(0.5)", 1.0471975511965979, "°"),
    ("inv tan(0.75)", "tan⁻¹(0.75)", 0.6435011087932844, "°"),
    ("inverse tan 0.75", "tan⁻¹(0.75)", 0.6435011087932844, "°"),
    ("tan⁻¹(H_y/H_x)", "tan⁻¹(Hy/Hx)", 0.6435011087932844, "°"),
    ("sqrt(80^2+60^2)", "√(80² + 60²)", 100.0, "bare"),
    ("sqrt 16", "√(16)", 4.0, "bare"),
    ("√(80²+60²)", "√(80² + 60²)", 100.0, "bare"),
    ("sqrt(H_x^2+H_y^2)", "√(Hx² + Hy²)", 100.0, "N"),
    ("√2", "√(2)", 1.4142135623730951, "bare"),
    ("[12*(9.8+1)]*{2}", "12·(9.8 + 1)·2", 259.20000000000005, "bare"),
    ("12*(9.8+1", "12·(9.8 + 1)", 129.60000000000002, "bare"),
    ("12*{9.8+[1", "12·(9.8 + 1)", 129.60000000000002, "bare"),
    ("1.2*10^3", "1.2·10³", 1200.0, "bare"),
    ("1.2×10³ N", "1.2·10³ N", 1200.0, "N"),
    ("1.2e3", "1.2·10³", 1200.0, "bare"),
    ("5/2*10^3", "(5/2)·10³", 2500.0, "bare"),
    ("64.2*1.6 + 96.3*3.2 = 2.4*T sin 55", "64.2·1.6 + 96.3·3.2 = 2.4·T·sin(55°)", 336.1799989762022, "N?"),
    ("(64.2*1.6+96.3*3.2)/(2.4 sin55)", "(64.2·1.6 + 96.3·3.2)/(2.4·sin(55°))", 208.9966095959613, "bare"),
    ("T = (64.2*1.6+96.3*3.2)/2.4 N", "T = ((64.2·1.6 + 96.3·3.2)/2.4) N", 171.20000000000002, "N?"),
    ("2 T", "2·T", 342.0, "N?"),
    ("2T", "2·T", 342.0, "N?"),
    ("2(3+4)", "2·(3 + 4)", 14.0, "bare"),
    ("(1+2)(3+4)", "(1 + 2)·(3 + 4)", 21.0, "bare"),
    ("(3+4)2", "(3 + 4)·2", 14.0, "bare"),
    ("T sin γ", "T·sin(γ)", 140.07499957341759, "N"),
    ("T sin γ N", "(T·sin(γ)) N", 140.07499957341759, "N"),
    ("117.6 sin 35 N", "(117.6·sin(35°)) N", 67.45258891488301, "N?"),
    ("117.6 sin 35° N", "(117.6·sin(35°)) N", 67.45258891488301, "N?"),
    ("117.6/sin 35 N", "(117.6/sin(35°)) N", 205.02934316504113, "N?"),
    ("Tsinγ", "T·sin(γ)", 140.07499957341759, "N"),
    ("d_Tsinγ", "dT·sin(γ)", 1.9659649062935802, "m"),
    ("d_T T sin γ", "dT·T·sin(γ)", 336.1799989762022, "N m"),
    ("Tsin55", "T·sin(55°)", 140.07499957341759, "N"),
    ("T x d_T", "T·dT", 410.4, "N m"),
    ("W_b⊥ = W_b cos θ", "Wb⊥ = Wb·cos(θ)", 96.33228040838543, "N"),
    ("Wbperp = Wb cos(35)", "Wb⊥ = Wb·cos(35°)", 96.33228040838543, "N"),
    ("Wb perp = 96.3", "Wb⊥ = 96.3", 96.3, "bare"),
    ("W_{b} = 117.6", "Wb = 117.6", 117.6, "bare"),
    ("W_bp*L/2", "Wb⊥·L/2", 154.08, "N m?"),
    ("3.2 m * 12", "3.2 m·12", 38.400000000000006, "m?"),
    ("3.2 m*9.8 m", "3.2 m·9.8 m", 31.360000000000003, "Dimension { length: 2, mass: 0, time: 0, angle: 0 }"),
    ("102.7 N m", "102.7 N m", 102.7, "N m"),
    ("102.7 Nm", "102.7 N m", 102.7, "N m"),
    ("102.7 N·m", "102.7 N m", 102.7, "N m"),
    ("102.7 N.m", "102.7 N m", 102.7, "N m"),
    ("102.7 newton metres", "102.7 N m", 102.7, "N m"),
    ("410.9 N m / 2.4 m", "(410.9 N m)/(2.4 m)", 171.20833333333334, "N"),
    ("½ L", "½·L", 1.6, "m?"),
    ("½*3.2", "½·3.2", 1.6, "bare"),
    ("L/2", "L/2", 1.6, "m?"),
    ("1/2 L", "(1/2)·L", 1.6, "m?"),
    ("2½", "2½", 2.5, "bare"),
    ("= 117.6", "117.6", 117.6, "bare"),
    ("12*9.8 =", "12·9.8", 117.60000000000001, "bare"),
    ("12*9.8 = 117.6 N.", "12·9.8 = 117.6 N", 117.6, "N"),
    ("up = down: T sin γ = 117.6", "T·sin(γ) = 117.6", 117.6, "bare"),
    ("Moments about the hinge: 2.4 T sin 55 = 410.9", "2.4·T·sin(55°) = 410.9", 410.9, "bare"),
    ("T: 45", "T = 45", 45.0, "bare"),
    ("T := 45", "T = 45", 45.0, "bare"),
    ("64.2:2.4", "64.2/2.4", 26.750000000000004, "bare"),
    ("64.2 ÷ 2.4", "64.2/2.4", 26.750000000000004, "bare"),
    ("W_b ≈ 118 N", "Wb ≈ 118 N", 118.0, "N"),
    ("|3-5|", "abs(3 − 5)", 2.0, "bare"),
    ("abs(3-5)", "abs(3 − 5)", 2.0, "bare"),
    ("2^-3", "2^(−3)", 0.125, "bare"),
    ("2**3", "2³", 8.0, "bare"),
    ("2^3^2", "2^(3²)", 512.0, "bare"),
    ("-2^2", "−2²", -4.0, "bare"),
    ("(-2)^2", "(−2)²", 4.0, "bare"),
    ("--3", "−(−3)", 3.0, "bare"),
    ("2*-3", "2·(−3)", -6.0, "bare"),
    ("+3", "3", 3.0, "bare"),
    ("3 – 5", "3 − 5", -2.0, "bare"),
    ("3 − 5", "3 − 5", -2.0, "bare"),
    ("35° + θ", "35° + θ", 1.2217304763960306, "°"),
    ("90 - θ", "90 − θ", 0.9599310885968813, "°"),
    ("90° - 35", "90° − 35", 0.9599310885968813, "°"),
    ("180 - 90 - 35", "180 − 90 − 35", 55.0, "bare"),
    ("sin(35*pi/180)", "sin(35·π/180)", 0.573576436351046, "Dimension { length: 0, mass: 0, time: 0, angle: 0 }"),
    ("θ = 35", "θ = 35", 35.0, "bare"),
    ("θ = 35°", "θ = 35°", 0.6108652381980153, "°"),
    ("θ = 0.611 rad", "θ = 0.611 rad", 0.611, "°"),
    ("θ°", "θ", 0.6108652381980153, "°"),
    ("(90-35)°", "(90 − 35)°", 0.9599310885968813, "°?"),
    ("sin((90-35)°)", "sin((90 − 35)°)", 0.8191520442889918, "Dimension { length: 0, mass: 0, time: 0, angle: 0 }"),
    ("W_1⊥ = 8*9.8*cos35°", "W1⊥ = 8·9.8·cos(35°)", 64.22152027225697, "bare"),
    ("T·sin(55)·2,4", "T·sin(55°)·2.4", 336.17999897620217, "N?"),
    ("12 × 9,8 = 117,6", "12·9.8 = 117.6", 117.6, "bare"),
    ("9.8(12)", "9.8·12", 117.60000000000001, "bare"),
    ("12 kilograms x 9.8", "12 kg·9.8", 117.60000000000001, "kg?"),
    ("12kg x 9.8m/s2", "12 kg·9.8 m/s²", 117.60000000000001, "N"),
    ("−117.6", "−117.6", -117.6, "bare"),
    ("(3+4) m", "(3 + 4)·m", 84.0, "kg?"),
    ("(12*9.8) N m", "(12·9.8) N m", 117.60000000000001, "N m?"),
    ("2π", "2·π", 6.283185307179586, "°?"),
    ("117.6 cos 35°*2.4 N m", "117.6·cos(35°)·2.4 N m", 231.197472980125, "N m?"),
    ("(64.2 N*1.6 m + 96.3 N*3.2 m)/2.4 m", "(64.2 N·1.6 m + 96.3 N·3.2 m)/(2.4 m)", 171.20000000000002, "N"),
    ("64.2 N*1.6 m", "64.2 N·1.6 m", 102.72000000000001, "N m"),
    ("8g cos 35", "8·g·cos(35°)", 64.22152027225697, "m/s²?"),
    ("8*g*cos35", "8·g·cos(35°)", 64.22152027225697, "m/s²?"),
    ("8(9.8)cos(35)", "8·9.8·cos(35°)", 64.22152027225697, "bare"),
    ("12*9.8=117.6=W_b", "12·9.8 = 117.6 = Wb", 117.6, "N"),
    ("2 sin 35 cos 35", "2·sin(35°)·cos(35°)", 0.9396926207859083, "bare"),
    ("sin35cos35", "sin(35°)·cos(35°)", 0.46984631039295416, "Dimension { length: 0, mass: 0, time: 0, angle: 0 }"),
    ("cos(θ)sin(γ)", "cos(θ)·sin(γ)", 0.6710100716628343, "Dimension { length: 0, mass: 0, time: 0, angle: 0 }"),
    ("sin(-35)", "sin(−35°)", -0.573576436351046, "Dimension { length: 0, mass: 0, time: 0, angle: 0 }"),
    ("sin -35", "sin(−35°)", -0.573576436351046, "Dimension { length: 0, mass: 0, time: 0, angle: 0 }"),
    ("-sin 35", "−sin(35°)", -0.573576436351046, "Dimension { length: 0, mass: 0, time: 0, angle: 0 }"),
    ("T=(W_b⊥*L/2 + W_1⊥*d_1)/(d_T*sinγ)", "T = (Wb⊥·L/2 + W1⊥·d1)/(dT·sin(γ))", 130.62288099747582, "N"),
    ("H_x²+H_y²", "Hx² + Hy²", 10000.0, "Dimension { length: 2, mass: 2, time: -4, angle: 0 }"),
    ("mgcosθ", "m·g·cos(θ)", 96.33228040838544, "N"),
    ("mgsin35", "m·g·sin(35°)", 67.45258891488302, "N"),
    ("3.2/2", "3.2/2", 1.6, "bare"),
    ("3.2m/2", "(3.2 m)/2", 1.6, "m?"),
    ("d_1 = 1.6m", "d1 = 1.6 m", 1.6, "m"),
    ("160 cm", "160 cm", 1.6, "m"),
    ("1600mm", "1600 mm", 1.6, "m"),
    ("12,0 kg", "12.0 kg", 12.0, "kg"),
    ("0,500", "0.500", 0.5, "bare"),
    ("1,234.5", "1234.5", 1234.5, "bare"),
    ("1.234,5", "1234.5", 1234.5, "bare"),
    ("1\u{a0}500 N", "1500 N", 1500.0, "N"),
    ("117.6*cos35deg", "117.6·cos(35°)", 96.33228040838543, "bare"),
    ("117.6 * cos 35 degrees", "117.6·cos(35°)", 96.33228040838543, "bare"),
    ("117.6*.819", "117.6·0.819", 96.31439999999999, "bare"),
    ("1.176e2 N", "1.176·10² N", 117.6, "N"),
    ("0.1176 kN", "0.1176 kN", 117.6, "N"),
    ("120 KG", "120 kg", 120.0, "kg"),
    ("H = sqrt(80^2 + 60^2) = 100 N", "H = √(80² + 60²) = 100 N", 100.0, "N"),
    ("ΣM = 0", "ΣM = 0", 0.0, "bare"),
    ("F_net = 0", "F_net = 0", 0.0, "bare"),
    ("2 times 3", "2·3", 6.0, "bare"),
    ("6 over 2", "6/2", 3.0, "bare"),
    ("T is 45 N", "T = 45 N", 45.0, "N"),
    ("sin 35.0", "sin(35.0°)", 0.573576436351046, "Dimension { length: 0, mass: 0, time: 0, angle: 0 }"),
    ("12⋅9.8⋅cos35", "12·9.8·cos(35°)", 96.33228040838544, "bare"),
    ("cos²35", "cos(35°)²", 0.6710100716628343, "Dimension { length: 0, mass: 0, time: 0, angle: 0 }"),
    ("12*9.8*sin(35)", "12·9.8·sin(35°)", 67.45258891488302, "bare"),
    ("7 − (2 − 3)", "7 − (2 − 3)", 8.0, "bare"),
    ("2 − 3 − 4", "2 − 3 − 4", -5.0, "bare"),
    ("8/4/2", "(8/4)/2", 1.0, "bare"),
    ("8/(4/2)", "8/(4/2)", 4.0, "bare"),
    ("2^(1/2)", "2^(1/2)", 1.4142135623730951, "bare"),
    ("12 kgf", "12 kgf", 117.6798, "N"),
    ("3 tonnes", "3 tonne", 3000.0, "kg"),
    ("2 m + 3 kg", "2·m + 3 kg", 27.0, "kg"),
    ("T sin γ N m", "((T·sin(γ)) N)·m", 1680.899994881011, "Dimension { length: 1, mass: 2, time: -2, angle: 0 }"),
];

/// Lines that cannot be read: the key of the trouble and where its caret stands, in bytes.
#[rustfmt::skip]
const TROUBLES: &[(&str, &str, usize, usize)] = &[
    ("12 9.8", "reading.two-numbers", 0, 6),
    ("12 9.8", "reading.two-numbers", 0, 6),
    ("12*9.8)", "reading.missing-bracket", 6, 7),
    ("(3+4]", "reading.missing-bracket", 4, 5),
    ("3 + ", "reading.number-expected", 3, 3),
    ("*3", "reading.unexpected", 0, 1),
    ("()", "reading.number-expected", 1, 2),
    ("sin", "reading.number-expected", 3, 3),
    ("sin tetha", "reading.unknown-name-near", 4, 9),
    ("T_x + 3", "reading.unknown-name-near", 0, 3),
    ("12 q", "reading.unknown-unit", 3, 4),
    ("117.6 lbs", "reading.unknown-unit", 6, 9),
    ("12 kg N", "reading.several-units", 6, 7),
    ("1e999", "reading.not-finite", 0, 5),
    ("5 % 3", "reading.unexpected", 2, 3),
    ("1,2,3", "reading.unexpected", 3, 4),
    ("12, 5", "reading.unexpected", 2, 3),
    ("R + 1", "reading.unknown-name", 0, 1),
    ("help", "reading.unknown-name", 0, 4),
    ("why?", "reading.unknown-name-near", 0, 3),
    ("12*#3", "reading.unexpected", 3, 4),
    ("12×9.8×q", "reading.unknown-name", 9, 10),
    ("60 N at 30 deg", "reading.unknown-name", 5, 7),
    ("atan2(1,2)", "reading.unknown-name", 0, 5),
    ("2 + )", "reading.number-expected", 4, 5),
    ("12 < 13", "reading.unexpected", 3, 4),
];

/// Lines that are read but have no value: what disagrees and where.
#[rustfmt::skip]
const MISMATCHES: &[(&str, &str, usize, usize)] = &[
    ("W_b + L", "Sum", 0, 7),
    ("sin(T)", "Angle", 4, 5),
    ("asin(T)", "Ratio", 5, 6),
    ("T^θ", "Exponent", 0, 4),
    ("T^0.3", "Power", 0, 5),
    ("sqrt(T)", "Root", 5, 6),
    ("asin(2)", "NotFinite", 0, 7),
    ("5/0", "NotFinite", 0, 3),
    ("tan 90", "NotFinite", 0, 6),
    ("sqrt(-1)", "NotFinite", 0, 8),
];

fn check(rows: &[Row]) {
    let (vocabulary, names) = (vocabulary(), names());
    for (line, layout, number, unit) in rows {
        let readings =
            read(line, &vocabulary).unwrap_or_else(|trouble| panic!("{line}: {trouble:?}"));
        assert_eq!(readings[0].layout(&vocabulary), *layout, "{line}");
        let side = readings[0].sides.last().unwrap();
        let value = evaluate(side, &mut |leaf| value_of(&names, leaf)).unwrap();
        let close = (value.number - number).abs() <= 1e-9 * number.abs().max(1e-3);
        assert!(close, "{line}: {} and not {number}", value.number);
        let dimension = unit_for(value.dimension)
            .map_or(format!("{:?}", value.dimension), |unit| {
                unit.symbol.to_owned()
            });
        let told = if value.bare {
            "bare".to_owned()
        } else {
            dimension
        };
        let uncertain = if value.uncertain { "?" } else { "" };
        assert_eq!(format!("{told}{uncertain}"), *unit, "{line}");
    }
}

// The layouts were read line by line by a person; the values follow from them.
#[test]
fn verif_first_things_a_newcomer_types() {
    check(FIRST_THINGS);
}

#[test]
fn verif_lines_in_every_form() {
    check(LINES);
}

#[test]
fn every_trouble_is_named_with_its_place() {
    let vocabulary = vocabulary();
    let words = leverwright::text::Words::english();
    for (line, key, start, end) in TROUBLES {
        let misreading = read(line, &vocabulary).expect_err(line);
        let span = misreading.span;
        assert_eq!(
            (misreading.trouble.key(), span.start, span.end),
            (*key, *start, *end),
            "{line}"
        );
        let sentence = words.say(key, &misreading.trouble.slots()).to_string();
        assert!(words.has(key) && !sentence.contains('{'), "{sentence}");
    }
    let long = "1+".repeat(251);
    assert_eq!(
        read(&long, &vocabulary).unwrap_err().trouble.key(),
        "reading.too-long"
    );
    let deep = "(".repeat(60) + "1";
    assert_eq!(
        read(&deep, &vocabulary).unwrap_err().trouble.key(),
        "reading.too-nested"
    );
    for blank in ["", "  ", "\t\u{7}", "?", "=", "∴ ."] {
        assert_eq!(
            read(blank, &vocabulary).unwrap_err().trouble.key(),
            "reading.empty",
            "{blank:?}"
        );
    }
}

#[test]
fn dimensions_that_disagree_keep_their_place() {
    let (vocabulary, names) = (vocabulary(), names());
    for (line, kind, start, end) in MISMATCHES {
        let reading = &read(line, &vocabulary).unwrap()[0];
        let mismatch =
            evaluate(&reading.sides[0], &mut |leaf| value_of(&names, leaf)).expect_err(line);
        let found = (
            format!("{:?}", mismatch.kind),
            mismatch.span.start,
            mismatch.span.end,
        );
        assert_eq!(found, ((*kind).to_owned(), *start, *end), "{line}");
    }
}

#[test]
fn a_force_where_a_moment_is_due_lacks_a_length() {
    let vocabulary = vocabulary();
    let reading = &read("T*d_T + W_b", &vocabulary).unwrap()[0];
    let names = names();
    let mismatch = evaluate(&reading.sides[0], &mut |leaf| value_of(&names, leaf)).unwrap_err();
    assert_eq!(mismatch.missing, Some(Dimension::LENGTH));
}

#[test]
fn lines_with_several_meanings_give_them_in_order() {
    for (line, layouts) in [
        ("12 g", &["12·g", "12 gram"][..]),
        ("171/2 sin 35", &["(171/2)·sin(35°)", "171/(2·sin(35°))"]),
        ("117.6 cos 35*2", &["117.6·cos(35°)·2", "117.6·cos(35·2)"]),
        ("sin 35^2", &["sin(35°)²", "sin(35²)"]),
        ("1,500 N", &["1500 N", "1.500 N"]),
        ("3 m", &["3 m", "3·m"]),
        ("cos 90-35", &["cos(90°) − 35", "cos(90° − 35°)"]),
    ] {
        let vocabulary = vocabulary();
        let found: Vec<String> = read(line, &vocabulary)
            .unwrap()
            .iter()
            .map(|reading| reading.layout(&vocabulary))
            .collect();
        assert_eq!(found, layouts, "{line}");
    }
}

#[test]
fn own_names_are_defined_at_the_head_only() {
    let reading = &read("so Wx = 12*9.8 = 117.6", &vocabulary()).unwrap()[0];
    let (name, span) = reading.defines.clone().unwrap();
    assert_eq!(
        (name.as_str(), span.start, span.end, reading.sides.len()),
        ("Wx", 3, 5, 2)
    );
    assert!(read("12*9.8 = Wx", &vocabulary()).is_err());
}

#[test]
fn literals_know_whether_they_stand_in_an_angle() {
    let reading = &read("2 T sin(90 - 35°) + (3) N", &vocabulary()).unwrap()[0];
    let places = reading.sides[0].literals();
    let found: Vec<(&str, bool)> = places
        .iter()
        .map(|place| (place.literal.digits.as_str(), place.in_angle))
        .collect();
    assert_eq!(
        found,
        [("2", false), ("90", true), ("35", true), ("3", false)]
    );
}

#[test]
fn figures_and_units_of_literals_are_kept() {
    let reading = &read("1.50 kN", &vocabulary()).unwrap()[0];
    let literal = reading.sides[0].literals()[0].literal.clone();
    assert_eq!(
        (literal.value, literal.typed, literal.written.significant),
        (1500.0, 1.5, 3)
    );
    assert!((literal.written.last_place - 10.0).abs() < 1e-9);
}

fn value(reading: &Reading) -> Vec<Option<f64>> {
    let names = names();
    let one = |side| {
        evaluate(side, &mut |leaf| value_of(&names, leaf))
            .ok()
            .map(|value| value.number)
    };
    reading.sides.iter().map(one).collect()
}

fn same(left: &[Option<f64>], right: &[Option<f64>]) -> bool {
    left.len() == right.len()
        && left.iter().zip(right).all(|pair| match pair {
            (Some(a), Some(b)) => (a - b).abs() <= 1e-9 * a.abs().max(b.abs()).max(1e-9),
            (None, None) => true,
            _ => false,
        })
}

/// A random expression with all brackets written, and its value by plain arithmetic.
fn expression() -> impl Strategy<Value = (String, f64)> {
    let leaf = (1_u32..999, any::<bool>()).prop_map(|(tenths, sine)| {
        let number = f64::from(tenths) / 10.0;
        if sine {
            (format!("sin {number}"), number.to_radians().sin())
        } else {
            (format!("{number}"), number)
        }
    });
    leaf.prop_recursive(5, 40, 2, |inner| {
        (inner.clone(), inner, 0..6).prop_map(|((a, x), (b, y), kind)| match kind {
            0 => (format!("({a} + {b})"), x + y),
            1 => (format!("({a} − {b})"), x - y),
            2 => (format!("({a})({b})"), x * y),
            3 => (format!("(({a})×({b}))"), x * y),
            4 => (format!("(({a})/({b}))"), x / y),
            _ => (format!("(-({a}))"), -x),
        })
    })
}

proptest! {
    #[test]
    fn nothing_panics(line in "\\PC{0,600}", any in any::<String>()) {
        let _ = read(&line, &vocabulary());
        let _ = read(&any, &vocabulary());
    }

    #[test]
    fn near_real_lines_never_panic_and_layouts_are_read_back(
        pieces in proptest::collection::vec(proptest::sample::select(vec![
            "12", "9.8", "35", "1,500", "96,3", "½", "T", "W_b", "mg", "θ", "d_T", "sin", "cos ", "tan^-1", "√",
            "+", "-", "−", "*", "·", "/", "^", "²", "(", ")", "[", "=", " ", " ", "°", " N", " m", "g", "kg", "π",
            "x", ",", ".", "e3", "×10³", "so ", "|", "Wx", ":",
        ]), 0..14)
    ) {
        let vocabulary = vocabulary();
        let line = pieces.concat();
        match read(&line, &vocabulary) {
            Err(misreading) => prop_assert!(line.get(misreading.span.start..misreading.span.end).is_some()),
            Ok(readings) => for reading in readings {
                reading.sides.iter().for_each(|side| side.visit(&mut |tree| {
                    assert!(line.get(tree.span.start..tree.span.end).is_some());
                }));
                let layout = reading.layout(&vocabulary);
                let again = read(&layout, &vocabulary);
                prop_assert!(again.is_ok(), "{line} → {layout}: {again:?}");
                let found = again.unwrap().iter().any(|again| same(&value(again), &value(&reading)));
                prop_assert!(found, "{line} → {layout}");
            }
        }
    }

    #[test]
    fn expressions_have_their_value((text, expected) in expression()) {
        if text.chars().count() <= 500 && expected.is_finite() && let Ok(readings) = read(&text, &vocabulary()) {
            prop_assert!(same(&value(&readings[0]), &[Some(expected)]), "{text}");
        }
    }
}
