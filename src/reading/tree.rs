//! What a line means: trees of operators over literals and names, each with its place in the line.

use super::layout::formula;
use super::names::Lexicon;
use super::scan::exact;
use crate::text::{Formula, Span, Symbol};
use crate::units::{Dimension, Unit, Written};

/// A name that may be typed, with the dimension of what it stands for. Never its value.
#[derive(Clone, Debug, PartialEq)]
pub struct Name {
    /// The symbol; every way to type it that [`Symbol::matches`] knows is read.
    pub symbol: Symbol,
    /// The dimension of the quantity.
    pub dimension: Dimension,
    /// Other ways to write it, such as `weight of the beam`.
    pub spellings: Vec<String>,
}

/// The place of a name in [`Vocabulary::names`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct NameId(pub usize);

/// The names that a line may use.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Vocabulary {
    /// The names, in order of preference where two could be meant.
    pub names: Vec<Name>,
}

impl Vocabulary {
    /// The name at this place, if there is one.
    pub fn name(&self, id: NameId) -> Option<&Name> {
        self.names.get(id.0)
    }

    /// The known name that is nearly spelled so, if there is one: for a word that was read as a
    /// name of the learner's own and may be a slip (`Tetha = 35`).
    pub fn nearest(&self, typed: &str) -> Option<Symbol> {
        Lexicon::new(self).nearest(typed)
    }
}

/// One way to understand a line.
#[derive(Clone, Debug, PartialEq)]
pub struct Reading {
    /// A name of the learner's own at the head of the line that the vocabulary does not know,
    /// as in `Wx = 12*9.8`, as typed, and where it stands.
    pub defines: Option<(String, Span)>,
    /// One tree for an expression, several for the sides of `=`. Where the line defines a name,
    /// the sides after it.
    pub sides: Vec<Tree>,
    /// What stands between the sides (and after a defined name); `None` for an expression.
    pub relation: Option<Relation>,
    /// What was passed over, completed or decided while reading.
    pub remarks: Vec<Remark>,
}

impl Reading {
    /// How the line was read, as one line of mathematics. See [`layout`](super::layout).
    pub fn layout(&self, vocabulary: &Vocabulary) -> String {
        self.formula(vocabulary).row()
    }

    /// How the line was read, as a formula that can be set in one row or with stacked fractions.
    pub fn formula(&self, vocabulary: &Vocabulary) -> Formula {
        let sign = match self.relation {
            Some(Relation::About) => " ≈ ",
            _ => " = ",
        };
        let own = self.defines.iter().map(|(name, _)| Formula::text(name));
        let sides = self.sides.iter().map(|side| formula(side, vocabulary));
        let mut parts = Vec::new();
        for side in own.chain(sides) {
            if !parts.is_empty() {
                parts.push(Formula::text(sign));
            }
            parts.push(side);
        }
        Formula::Parts(parts)
    }
}

/// What a line says about its sides.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum Relation {
    /// The sides are equal.
    Equal,
    /// At least one sign was `≈` or `~`: the sides are nearly equal.
    About,
}

/// A direction on the page, as it is said after a value.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Way {
    /// Upwards.
    Up,
    /// Downwards.
    Down,
    /// To the left.
    Left,
    /// To the right.
    Right,
    /// Of a couple or moment: anticlockwise.
    Anticlockwise,
    /// Of a couple or moment: clockwise.
    Clockwise,
}

/// Something that was decided while reading and may be told to the learner.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub enum Remark {
    /// A bracket was left open and is closed at the end of its side.
    BracketClosed {
        /// The opening bracket.
        span: Span,
    },
    /// A comma was read as the decimal sign.
    DecimalComma {
        /// The number.
        span: Span,
    },
    /// A comma (or a point, where a decimal comma follows) was read as a separator of thousands.
    Thousands {
        /// The number.
        span: Span,
    },
    /// A unit stands for the whole expression, as in `(12*9.8) N`.
    UnitOfWhole {
        /// The unit.
        span: Span,
    },
    /// `x` was read as a multiplication sign.
    LetterAsTimes {
        /// The letter.
        span: Span,
    },
    /// A direction was said after the value: `349 N to the left`.
    Direction {
        /// The words.
        span: Span,
        /// Which way.
        way: Way,
    },
    /// Words or signs that carry nothing were passed over: `so`, a label, a sign at the end.
    PassedOver {
        /// What was passed over.
        span: Span,
    },
}

/// An expression and the stretch of the line that it was read from.
#[derive(Clone, Debug, PartialEq)]
pub struct Tree {
    /// The outermost operation, or the leaf.
    pub node: Node,
    /// Bytes of the line as typed, brackets included where they belong to this expression.
    pub span: Span,
}

/// One operation or leaf.
#[derive(Clone, Debug, PartialEq)]
pub enum Node {
    /// A typed number, perhaps with a unit.
    Literal(Literal),
    /// A name of the vocabulary.
    Name(NameId),
    /// The opposite.
    Negative(Box<Tree>),
    /// Two expressions joined.
    Binary(Operator, Box<Tree>, Box<Tree>),
    /// A function of one expression.
    Call(Function, Box<Tree>),
}

/// A number as typed.
#[derive(Clone, Debug, PartialEq)]
pub struct Literal {
    /// Its place among the literals of the line, from 0; unique in a reading.
    pub index: usize,
    /// In SI units where a unit was written (radians for `35°`), else as typed.
    pub value: f64,
    /// As typed, in the unit written.
    pub typed: f64,
    /// The digits as typed, with a decimal point and without separators: `1500`, `9.80`, `1.2e3`,
    /// `½`, `π`. Empty for a unit that stands alone.
    pub digits: String,
    /// How finely it was written, in the units of `value`.
    pub written: Written,
    /// The unit written after it.
    pub unit: Option<&'static Unit>,
    /// True for a unit that stands for a whole expression, as in `(12*9.8) N`: a factor of one
    /// newton that nobody typed as a number. It stands for no quantity.
    pub unit_alone: bool,
}

impl Literal {
    /// A unit without a number: a factor of one.
    pub(crate) fn unit_alone(index: usize, unit: &'static Unit) -> Literal {
        Literal {
            index,
            value: unit.factor,
            typed: 1.0,
            digits: String::new(),
            written: exact(),
            unit: Some(unit),
            unit_alone: true,
        }
    }
}

/// An operation on two expressions.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Operator {
    /// `+`
    Add,
    /// `−`
    Subtract,
    /// `·`, written or implied.
    Multiply,
    /// `/`
    Divide,
    /// `^`
    Power,
}

/// A function of one expression.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Function {
    /// sin
    Sine,
    /// cos
    Cosine,
    /// tan
    Tangent,
    /// sin⁻¹
    ArcSine,
    /// cos⁻¹
    ArcCosine,
    /// tan⁻¹
    ArcTangent,
    /// √
    SquareRoot,
    /// The absolute value.
    Absolute,
}

impl Function {
    /// True for sin⁻¹, cos⁻¹ and tan⁻¹, whose value is an angle.
    pub(super) fn gives_angle(self) -> bool {
        matches!(
            self,
            Function::ArcSine | Function::ArcCosine | Function::ArcTangent
        )
    }

    /// True for sin, cos and tan, whose argument is an angle.
    pub fn takes_angle(self) -> bool {
        matches!(self, Function::Sine | Function::Cosine | Function::Tangent)
    }

    /// The inverse of sin, cos or tan.
    pub(crate) fn inverse(self) -> Option<Function> {
        match self {
            Function::Sine => Some(Function::ArcSine),
            Function::Cosine => Some(Function::ArcCosine),
            Function::Tangent => Some(Function::ArcTangent),
            _ => None,
        }
    }
}

/// A literal and where it stands in its tree.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Place<'a> {
    /// The literal.
    pub literal: &'a Literal,
    /// Its stretch of the line.
    pub span: Span,
    /// True inside the argument of sin, cos or tan: without a unit it is (part of) an angle in
    /// degrees there.
    pub in_angle: bool,
}

impl Tree {
    /// All literals from left to right, units that stand alone left out.
    pub fn literals(&self) -> Vec<Place<'_>> {
        let mut places = Vec::new();
        self.gather(false, &mut places);
        places
    }

    /// All names from left to right, each as often as it stands there.
    pub fn names(&self) -> Vec<(NameId, Span)> {
        let mut names = Vec::new();
        self.visit(&mut |tree| {
            if let Node::Name(id) = tree.node {
                names.push((id, tree.span));
            }
        });
        names
    }

    /// Calls `see` for this tree and every tree in it: each before its parts, left before right.
    pub fn visit<'a>(&'a self, see: &mut dyn FnMut(&'a Tree)) {
        see(self);
        match &self.node {
            Node::Literal(_) | Node::Name(_) => {}
            Node::Negative(inner) | Node::Call(_, inner) => inner.visit(see),
            Node::Binary(_, left, right) => {
                left.visit(see);
                right.visit(see);
            }
        }
    }

    fn gather<'a>(&'a self, in_angle: bool, places: &mut Vec<Place<'a>>) {
        match &self.node {
            Node::Literal(literal) if literal.unit_alone => {}
            Node::Literal(literal) => places.push(Place {
                literal,
                span: self.span,
                in_angle,
            }),
            Node::Name(_) => {}
            Node::Negative(inner) => inner.gather(in_angle, places),
            Node::Binary(_, left, right) => {
                left.gather(in_angle, places);
                right.gather(in_angle, places);
            }
            // What stands inside tan⁻¹ is a ratio, even inside a sine.
            Node::Call(function, inner) => {
                let angle = match function {
                    Function::SquareRoot | Function::Absolute => in_angle,
                    function => function.takes_angle(),
                };
                inner.gather(angle, places);
            }
        }
    }
}
