//! The manners in which a working is written down, and how its numbers are spelled.

use rand::Rng;
use rand::rngs::ChaCha8Rng;

/// How moments are worked out.
#[derive(Clone, Copy, Debug)]
pub(super) enum Method {
    Components,
    Arms,
    Coordinates,
}

/// About which point.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Pivot {
    Hinge,
    Knot,
    Tip,
}

/// What stands for a known quantity.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Naming {
    Names,
    OwnNames,
    Numbers,
}

/// In which order the lines come.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Order {
    /// As they follow from one another.
    Steps,
    /// All relations before all values.
    RelationsFirst,
    /// At random, but own names after what they stand for, and values of two figures in the order in
    /// which they are found.
    Mixed,
}

/// In which sense the parts of the hinge's force are counted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Sense {
    /// In the sense that they have.
    Foreseen,
    /// To the right and upwards, whatever they are.
    RightUp,
    /// To the left and downwards.
    LeftDown,
}

/// How a balance stands on the line.
#[derive(Clone, Copy, Debug)]
pub(super) enum Layout {
    /// One turning sense on each side.
    Sides,
    /// A sum that is zero.
    Zero,
    /// Zero, written first, and the other turning sense positive.
    ZeroFirst,
}

/// A manner of working.
#[derive(Clone, Copy, Debug)]
pub(super) struct Style {
    pub(super) method: Method,
    pub(super) pivot: Pivot,
    pub(super) naming: Naming,
    /// Significant figures that are written and carried on.
    pub(super) figures: usize,
    pub(super) order: Order,
    pub(super) sense: Sense,
    pub(super) layout: Layout,
    pub(super) spelling: usize,
}

const METHODS: [Method; 3] = [Method::Components, Method::Arms, Method::Coordinates];
const PIVOTS: [Pivot; 3] = [Pivot::Hinge, Pivot::Knot, Pivot::Tip];
const NAMINGS: [Naming; 3] = [Naming::Names, Naming::OwnNames, Naming::Numbers];
const ORDERS: [Order; 3] = [Order::Steps, Order::RelationsFirst, Order::Mixed];
const SENSES: [Sense; 3] = [Sense::Foreseen, Sense::RightUp, Sense::LeftDown];
const LAYOUTS: [Layout; 3] = [Layout::Sides, Layout::Zero, Layout::ZeroFirst];

/// A sine or cosine of an angle, as she writes it.
pub(super) type Ratio = fn(&str, &str) -> String;

/// Times, the degrees of an angle in a function, units in equations, decimal comma.
pub(super) const SPELLINGS: [(&str, Ratio, bool, bool); 6] = [
    ("*", |name, angle| format!("{name}({angle})"), false, false),
    (
        "·",
        |name, angle| format!("{name} {}", bracketed(angle, "°")),
        true,
        false,
    ),
    (
        " * ",
        |name, angle| format!("{name}({angle} deg)"),
        false,
        false,
    ),
    ("×", |name, angle| format!("{name}({angle}°)"), false, true),
    (
        " x ",
        |name, angle| format!("{name} {}", bracketed(angle, "")),
        false,
        false,
    ),
    ("*", |name, angle| format!("{name}({angle}°)"), true, false),
];

fn bracketed(angle: &str, degrees: &str) -> String {
    match angle.parse::<f64>() {
        Ok(_) => format!("{angle}{degrees}"),
        Err(_) if angle.chars().all(char::is_alphabetic) => angle.to_owned(),
        Err(_) => format!("({angle})"),
    }
}

impl Style {
    /// One manner, every part of it at random.
    pub(super) fn drawn(random: &mut ChaCha8Rng) -> Style {
        let mut pick = |count: usize| random.next_u32() as usize % count;
        Style {
            method: METHODS[pick(3)],
            pivot: PIVOTS[pick(3)],
            naming: NAMINGS[pick(3)],
            figures: 2 + pick(5),
            order: ORDERS[pick(3)],
            sense: SENSES[pick(3)],
            layout: LAYOUTS[pick(3)],
            spelling: pick(SPELLINGS.len()),
        }
    }

    /// A manner in which values of her own can be carried on.
    pub(super) fn carrying(random: &mut ChaCha8Rng) -> Style {
        let drawn = Style::drawn(random);
        Style {
            naming: match drawn.naming {
                Naming::Numbers => Naming::Numbers,
                _ => Naming::Names,
            },
            figures: drawn.figures.max(3),
            order: Order::Steps,
            ..drawn
        }
    }

    /// A manner that a plain evaluator can read too.
    pub(super) fn plain(random: &mut ChaCha8Rng) -> Style {
        let drawn = Style::drawn(random);
        Style {
            naming: match drawn.naming {
                Naming::Numbers => Naming::Numbers,
                _ => Naming::Names,
            },
            figures: 6,
            sense: Sense::Foreseen,
            spelling: 0,
            ..drawn
        }
    }

    /// Each part of the manner.
    fn parts(&self, lesson: &str) -> [String; 9] {
        [
            lesson.to_owned(),
            format!("{:?}", self.method),
            format!("{:?}", self.pivot),
            format!("{:?}", self.naming),
            format!("{} figures", self.figures),
            format!("{:?}", self.order),
            format!("{:?}", self.sense),
            format!("{:?}", self.layout),
            format!("spelling {}", self.spelling),
        ]
    }

    /// Each part of the manner by itself, and each pair of parts.
    pub(super) fn cells(&self, lesson: &str) -> Vec<String> {
        let parts = self.parts(lesson);
        let mut cells = parts.to_vec();
        for (at, one) in parts.iter().enumerate() {
            cells.extend(parts[..at].iter().map(|other| format!("{other}, {one}")));
        }
        cells
    }

    /// Every three parts of the manner.
    pub(super) fn triples(&self, lesson: &str) -> Vec<String> {
        let parts = self.parts(lesson);
        let mut triples = Vec::new();
        for (at, one) in parts.iter().enumerate() {
            for (before, other) in parts[..at].iter().enumerate() {
                let third = parts[..before].iter();
                triples.extend(third.map(|third| format!("{third}, {other}, {one}")));
            }
        }
        triples
    }
}

/// A value with so many significant figures, and no more zeros than that.
pub(super) fn rounded(value: f64, figures: usize) -> String {
    if value == 0.0 {
        return "0".to_owned();
    }
    let places = figures as i32 - 1 - value.abs().log10().floor() as i32;
    match places {
        0.. => format!("{value:.0$}", places as usize),
        _ => {
            let unit = 10f64.powi(-places);
            format!("{:.0}", (value / unit).round() * unit)
        }
    }
}

/// A given number as it is printed: no more places than it has.
pub(super) fn plain(value: f64) -> String {
    let text = format!("{value:.4}");
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}
