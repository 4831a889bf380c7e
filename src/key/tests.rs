//! The key of two hand-made problems, against hand calculations.

use super::*;
use crate::problem::{
    Body, Direction, Given, GivenId, Load, LoadKind, Parts, Place, Problem, Reference, Rope, Side,
    Support, SupportKind, Tilt,
};
use crate::text::Symbol;
use crate::units::Dimension;

fn given(symbol: &str, value: f64, written: &str, dimension: Dimension) -> Given {
    Given {
        symbol: Symbol::new(symbol),
        meaning: symbol.to_owned(),
        value,
        written: written.to_owned(),
        dimension,
    }
}

/// A mast 4 m long, 35° from the vertical, leaning right, 12 kg, 8 kg at the tip, held by a level
/// rope to the left tied 3 m along it.
pub(crate) fn mast() -> Problem {
    Problem::new(Parts {
        title: "A mast".into(),
        statement: "A mast.".into(),
        caution: String::new(),
        givens: vec![
            given("L", 4.0, "4 m", Dimension::LENGTH),
            given("m_b", 12.0, "12 kg", Dimension::MASS),
            given("m_1", 8.0, "8 kg", Dimension::MASS),
            given("θ", 35.0_f64.to_radians(), "35°", Dimension::ANGLE),
            given("d_T", 3.0, "3 m", Dimension::LENGTH),
        ],
        body: Body {
            noun: "mast".into(),
            length: GivenId(0),
            mass: Some(GivenId(1)),
            weight_symbol: Symbol::new("W_b"),
            centre: Place::Middle,
            tilt: Tilt::Rising {
                angle: GivenId(3),
                from: Reference::Vertical,
            },
            towards: Side::Right,
        },
        supports: vec![Support {
            symbol: Symbol::new("H"),
            noun: "hinge".into(),
            at: Place::Foot,
            kind: SupportKind::Hinge,
        }],
        ropes: vec![Rope {
            symbol: Symbol::new("T"),
            noun: "rope".into(),
            at: Place::At(GivenId(4)),
            direction: Direction::Level(Side::Left),
        }],
        loads: vec![Load {
            symbol: Symbol::new("W_1"),
            noun: "lamp".into(),
            at: Place::Tip,
            kind: LoadKind::Mass(GivenId(2)),
            stands: false,
        }],
        gravity: 9.8,
        accepted_gravity: vec![9.81],
        figures: 3,
    })
    .unwrap_or_else(|flaws| panic!("{flaws:?}"))
}

#[test]
fn the_mast_is_worked_as_by_hand() {
    let problem = mast();
    let key = derive(&problem).unwrap_or_else(|trouble| panic!("{trouble}"));
    let sampling = Sampling::of(&problem);
    let pins = Pins::new();
    // By hand: (12·9.8·2 + 8·9.8·4)·sin 35° = T·3·sin 55°.
    let by_hand = (12.0 * 9.8 * 2.0 + 8.0 * 9.8 * 4.0) * 35.0_f64.to_radians().sin()
        / (3.0 * 55.0_f64.to_radians().sin());
    let pull = key.value(
        StepId::Pull(crate::problem::ForceId::Rope(0)),
        sampling.own(),
        &pins,
    );
    assert!(
        (pull.unwrap_or(0.0) / by_hand - 1.0).abs() < 1e-12,
        "{pull:?} {by_hand}"
    );
}

#[test]
fn a_term_below_zero_is_taken_away() {
    let problem = mast();
    let key = derive(&problem).unwrap_or_else(|trouble| panic!("{trouble}"));
    let sampling = Sampling::of(&problem);
    let load = crate::problem::ForceId::Load(0);
    let mut pins = Pins::new();
    pins.insert(StepId::Weight(load), -798.0);
    let named: Vec<StepId> = key
        .steps
        .iter()
        .map(|step| step.id)
        .filter(|id| matches!(id, StepId::Reaction(..)))
        .collect();
    let teller = Teller {
        problem: &problem,
        key: &key,
        sample: sampling.own(),
        pins: &pins,
        figures: 3,
        typed: false,
        named: &named,
    };
    let balance = key
        .balance(StepId::ForceSum(Axis::Vertical))
        .unwrap_or_else(|| panic!("a balance"));
    // By hand: 12·9.8 = 117.6, in three figures 118.
    assert_eq!(balance_numbers(&teller, balance), "118 N − 798 N = Hy");
}

#[test]
fn two_minus_signs_are_not_written_and_a_number_before_a_name_needs_no_dot() {
    let atom = || Formula::<StepId>::given(GivenId(0));
    let minus = |part: Formula| Formula::Negative(Box::new(part));
    let both = || Formula::Sum(vec![minus(atom()), minus(Formula::given(GivenId(4)))]);
    let tan = || Formula::Tangent(Box::new(Formula::given(GivenId(3))));
    let product = |first: Formula| Formula::Product(vec![first, tan()]);
    let problem = mast();
    let key = derive(&problem).expect("a key");
    let rows = [
        (minus(product(both())), "(L + dT)·tan θ"),
        (product(both()), "(−L − dT)·tan θ"),
        (Formula::Sum(vec![atom(), minus(minus(atom()))]), "L + L"),
        (Formula::Sum(vec![atom(), minus(atom())]), "L − L"),
        (
            Formula::Quotient(
                Box::new(Formula::Product(vec![Formula::Number(3.0), atom()])),
                Box::new(Formula::Number(4.0)),
            ),
            "3L/4",
        ),
        (
            Formula::Product(vec![Formula::Number(2.0), tan()]),
            "2·tan θ",
        ),
    ];
    for (formula, shown) in rows {
        assert_eq!(formula_names(&problem, &key, &formula), shown);
    }
}
