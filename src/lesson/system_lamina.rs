//! Reading laminae: bodies cut of named shapes, with holes.

use super::decode::{Fields, Item};
use super::quantity::Want;
use super::system_names::Reader;
use super::system_spot::stands;
use crate::problem::Place;
use crate::system::{Coordinate, Facing, Lamina, LaminaMass, Piece, Shape};

/// The fields of every shape; its kind adds some.
const PIECE: &[&str] = &["shape", "noun", "x", "y", "hole", "mass"];

/// The shapes by their words, each with the fields that it adds.
pub(super) const SHAPES: &[(&str, &[&str])] = &[
    ("rectangle", &["width", "height"]),
    ("triangle", &["width", "height", "apex", "points"]),
    ("disc", &["radius"]),
    ("semicircle", &["radius", "points"]),
    ("quarter-circle", &["radius", "points"]),
];
const A_SHAPE: &str = "\"rectangle\", \"triangle\", \"disc\", \"semicircle\" or \"quarter-circle\"";

/// The ways in which a shape can point, by their words.
pub(super) const FACINGS: &[(&str, Facing)] = &[
    ("up", Facing::Up),
    ("left", Facing::Left),
    ("down", Facing::Down),
    ("right", Facing::Right),
];

/// The most shapes of a lamina.
const MOST: usize = 20;

/// The word of a shape.
pub(super) fn shape_word(shape: &Shape) -> &'static str {
    let at = match shape {
        Shape::Rectangle { .. } => 0,
        Shape::Triangle { .. } => 1,
        Shape::Disc { .. } => 2,
        Shape::Semicircle { .. } => 3,
        Shape::QuarterCircle { .. } => 4,
    };
    SHAPES[at].0
}

impl<'a> Reader<'_, 'a> {
    /// A lamina: the fields of its weight hold `shapes`.
    pub(super) fn lamina(&mut self, item: &Item<'a>, fields: &Fields<'a>) -> Option<Lamina> {
        let shapes = fields.optional("shapes")?;
        let elements = shapes.elements("shapes", (1, MOST), self.report)?;
        let mut pieces = Vec::new();
        let mut lacks_solid = false;
        for (index, element) in elements.iter().enumerate() {
            let object = element.value.as_object();
            let hole = object.and_then(|object| object.get_boolean("hole"));
            match self.piece(element, index + 1) {
                Some(piece) => {
                    pieces.push(piece);
                    self.pieces.push(element.clone());
                }
                // What is wrong with the others does not depend on a hole that cannot be read.
                None => lacks_solid |= !hole.is_some_and(|hole| hole.value),
            }
        }
        let mass = self.lamina_mass(item, fields, &elements);
        Some(Lamina {
            pieces: (!lacks_solid).then_some(pieces)?,
            mass: mass?,
        })
    }

    /// One of: the mass of the whole, the mass per area, a mass of every shape.
    fn lamina_mass(
        &mut self,
        item: &Item<'a>,
        fields: &Fields<'a>,
        pieces: &[Item<'a>],
    ) -> Option<LaminaMass> {
        let (whole, density) = (fields.optional("mass"), fields.optional("mass_per_area"));
        let own = pieces.iter().filter(|piece| stands(piece, "mass")).count();
        match (whole, density, own) {
            (Some(whole), None, 0) => self
                .quantity(&whole, Want::Mass, "m_b")
                .map(LaminaMass::Whole),
            (None, Some(density), 0) => self
                .quantity(&density, Want::MassPerArea, "σ")
                .map(LaminaMass::PerArea),
            (None, None, own) if own == pieces.len() => Some(LaminaMass::OfPieces),
            _ => {
                let why = "a lamina has a \"mass\" as a whole, or a \"mass_per_area\", or a \
                           \"mass\" in every one of its shapes; give just one of these";
                self.contradiction(item, why);
                None
            }
        }
    }

    fn piece(&mut self, item: &Item<'a>, number: usize) -> Option<Piece> {
        let object = item.value.as_object();
        let word = object.and_then(|object| object.get_string("shape"));
        let word = word.map_or("", |word| word.value.as_ref());
        let more = SHAPES.iter().find(|(known, _)| *known == word);
        let known: Vec<&str> = match more {
            Some((_, more)) => PIECE.iter().chain(*more).copied().collect(),
            None => {
                let every = SHAPES.iter().flat_map(|(_, more)| *more);
                PIECE.iter().chain(every).copied().collect()
            }
        };
        let fields = item.fields(&known, self.report)?;
        let kinds: Vec<(&str, &str)> = SHAPES.iter().map(|(word, _)| (*word, *word)).collect();
        let word = fields
            .required("shape", A_SHAPE, self.report)
            .and_then(|item| item.word(&kinds, self.report))?;
        let noun = match fields.optional("noun") {
            None => Some(word.replace('-', " ")),
            Some(item) => item
                .said("a word such as \"hole\"", self.report)
                .map(str::to_owned),
        };
        let shape = self.shape(word, &fields, number);
        // The centre of a disc is its centroid; of other shapes a corner is told.
        let letters = if word == "disc" {
            ["x", "y"]
        } else {
            ["u", "v"]
        };
        let mut axis = |name: &str, letter: &str| match fields.optional(name) {
            None => Some(Coordinate::default()),
            Some(item) => self.coordinate(&item, &format!("{letter}_{number}")),
        };
        let (x, y) = (axis("x", letters[0]), axis("y", letters[1]));
        let points = match fields.optional("points") {
            None => Some(Facing::Up),
            Some(item) => item.word(FACINGS, self.report),
        };
        let hole = match fields.has("hole") {
            true => self.truth(&fields, "hole", "true for a shape that is taken away"),
            false => Some(false),
        };
        let mass = match fields.optional("mass") {
            None => Some(None),
            Some(item) => self
                .quantity(&item, Want::Mass, &format!("m_{number}"))
                .map(Some),
        };
        Some(Piece {
            noun: noun?,
            shape: shape?,
            x: x?,
            y: y?,
            points: points?,
            hole: hole?,
            mass: mass?,
        })
    }

    fn shape(&mut self, word: &str, fields: &Fields<'a>, number: usize) -> Option<Shape> {
        let mut length = |name: &str, letter: &str| {
            self.number_in(fields, name, Want::Length, &format!("{letter}_{number}"))
        };
        if !matches!(word, "rectangle" | "triangle") {
            let radius = length("radius", "r")?;
            return Some(match word {
                "disc" => Shape::Disc { radius },
                "semicircle" => Shape::Semicircle { radius },
                _ => Shape::QuarterCircle { radius },
            });
        }
        let (width, height) = (length("width", "w"), length("height", "h"));
        if word == "rectangle" {
            let (width, height) = (width?, height?);
            return Some(Shape::Rectangle { width, height });
        }
        let apex = match fields.optional("apex") {
            None => Some(Place::Foot),
            Some(item) => self.place(&item, &format!("c_{number}")),
        };
        Some(Shape::Triangle {
            width: width?,
            height: height?,
            apex: apex?,
        })
    }
}
