//! How a line was read, written as mathematics that has only one meaning.

use super::tree::{Function, Literal, Node, Operator, Tree, Vocabulary};
use crate::text::{Formula, superscript};

/// How tightly a piece of layout holds together.
#[derive(Clone, Copy, PartialEq, PartialOrd)]
enum Grip {
    Sum,
    Sign,
    Product,
    Power,
    Leaf,
}

/// A tree as one line: `(64.2·1.6 + 96.3·3.2)/(2.4·sin(55°))`.
///
/// Brackets stand only where they are needed. A number without unit that is a whole argument of
/// sin, cos or tan, or a term of it, is shown in degrees, since that is how it was read. The layout
/// can be read again and gives the same value.
pub fn layout(tree: &Tree, vocabulary: &Vocabulary) -> String {
    formula(tree, vocabulary).row()
}

/// A tree as a formula, whose one row is its [`layout`].
pub(super) fn formula(tree: &Tree, vocabulary: &Vocabulary) -> Formula {
    Layout { vocabulary }.tree(tree, false).0
}

struct Layout<'a> {
    vocabulary: &'a Vocabulary,
}

impl Layout<'_> {
    fn tree(&self, tree: &Tree, angle: bool) -> (Formula, Grip) {
        match &tree.node {
            Node::Literal(literal) => {
                let (text, grip) = self.literal(literal, angle);
                (Formula::Text(text), grip)
            }
            Node::Name(id) => {
                let name = self.vocabulary.name(*id);
                let text = name.map_or_else(|| "?".to_owned(), |name| name.symbol.shown());
                (Formula::Text(text), Grip::Leaf)
            }
            Node::Negative(inner) => {
                let inner = self.held(inner, Grip::Product, angle);
                (Formula::Parts(vec![Formula::Minus, inner]), Grip::Sign)
            }
            Node::Binary(operator, left, right) => self.binary(*operator, left, right, angle),
            Node::Call(Function::SquareRoot, inner) => (
                Formula::Root(Box::new(self.tree(inner, false).0)),
                Grip::Leaf,
            ),
            Node::Call(function, inner) => {
                let inner = self.tree(inner, function.takes_angle()).0;
                let parts = vec![
                    Formula::text(sign(*function)),
                    Formula::Brackets(Box::new(inner)),
                ];
                (Formula::Parts(parts), Grip::Leaf)
            }
        }
    }

    fn literal(&self, literal: &Literal, angle: bool) -> (String, Grip) {
        let Some(unit) = literal.unit else {
            let degrees = if angle { "°" } else { "" };
            return (
                format!("{}{degrees}", shown(&literal.digits)),
                grip(literal),
            );
        };
        // A lone letter could be taken for a name.
        let symbol = match unit.symbol {
            "g" => "gram",
            "t" => "tonne",
            symbol => symbol,
        };
        match (literal.digits.as_str(), symbol) {
            ("π", _) => ("π".to_owned(), Grip::Leaf),
            (digits, "°") => (format!("{}°", shown(digits)), grip(literal)),
            (digits, symbol) => (format!("{} {symbol}", shown(digits)), Grip::Product),
        }
    }

    fn binary(
        &self,
        operator: Operator,
        left: &Tree,
        right: &Tree,
        angle: bool,
    ) -> (Formula, Grip) {
        match operator {
            Operator::Add | Operator::Subtract => {
                let sign = if operator == Operator::Add {
                    " + "
                } else {
                    " − "
                };
                // A sum on the right of a sign keeps its brackets; so does a minus.
                let left = self.held(left, Grip::Sum, angle);
                let right = self.held(right, Grip::Product, angle);
                let parts = vec![left, Formula::text(sign), right];
                (Formula::Parts(parts), Grip::Sum)
            }
            Operator::Multiply => {
                if let Node::Literal(literal) = &right.node
                    && literal.unit_alone
                {
                    return (self.unit_of(left, literal), Grip::Product);
                }
                let left = self.factor(left, !matches!(right.node, Node::Literal(_)));
                let right = self.factor_right(right);
                let parts = vec![left, Formula::Times, right];
                (Formula::Parts(parts), Grip::Product)
            }
            Operator::Divide => {
                // Over and under a bar no brackets are needed.
                let left = loosened(self.factor(left, true));
                let right = loosened(self.held(right, Grip::Power, false));
                let fraction = Formula::Fraction(Box::new(left), Box::new(right));
                (fraction, Grip::Product)
            }
            Operator::Power => {
                let base = self.held(left, Grip::Leaf, false);
                let exponent = self.held(right, Grip::Leaf, false);
                let power = Formula::Power(Box::new(base), Box::new(exponent));
                (power, Grip::Power)
            }
        }
    }

    /// A whole in brackets before its unit; a fraction needs them in one row only.
    fn unit_of(&self, whole: &Tree, literal: &Literal) -> Formula {
        let unit = self.literal(literal, false).0;
        let gap = if unit == "°" { "" } else { " " };
        let inside = Box::new(self.tree(whole, false).0);
        let whole = match (&whole.node, gap) {
            (Node::Binary(Operator::Divide, ..), " ") => Formula::Kept(inside),
            _ => Formula::Brackets(inside),
        };
        let unit = format!("{gap}{}", unit.trim_start());
        Formula::Parts(vec![whole, Formula::Text(unit)])
    }

    /// A left factor. A unit before a name would run into it: `(9.8 N)·m`. A quotient is kept
    /// apart, since many read `171/2·x` as 171/(2·x).
    fn factor(&self, tree: &Tree, before_name: bool) -> Formula {
        if matches!(tree.node, Node::Binary(Operator::Divide, ..)) {
            return loosened(self.held(tree, Grip::Leaf, false));
        }
        let has_unit = |literal: &Literal| literal.unit.is_some() && literal.digits != "π";
        let ends_in_unit = match &tree.node {
            Node::Literal(literal) => has_unit(literal),
            Node::Binary(_, _, right) => {
                matches!(&right.node, Node::Literal(literal) if has_unit(literal))
            }
            _ => false,
        };
        if before_name && ends_in_unit {
            return self.held(tree, Grip::Leaf, false);
        }
        self.held(tree, Grip::Product, false)
    }

    /// A right factor: products there keep their brackets, a number with its unit needs none.
    fn factor_right(&self, tree: &Tree) -> Formula {
        let held = self.held(tree, Grip::Power, false);
        match &tree.node {
            Node::Literal(_) => self.tree(tree, false).0,
            Node::Binary(Operator::Divide, ..) => loosened(held),
            _ => held,
        }
    }

    /// In brackets unless it holds together at least so tightly.
    fn held(&self, tree: &Tree, least: Grip, angle: bool) -> Formula {
        let (formula, grip) = self.tree(tree, angle);
        if grip >= least {
            formula
        } else {
            Formula::Brackets(Box::new(formula))
        }
    }
}

/// Without its brackets where fractions are stacked.
fn loosened(formula: Formula) -> Formula {
    match formula {
        Formula::Brackets(inner) => Formula::Kept(inner),
        formula => formula,
    }
}

/// A number with a power of ten is a product to the eye.
fn grip(literal: &Literal) -> Grip {
    if literal.digits.contains('e') {
        Grip::Product
    } else {
        Grip::Leaf
    }
}

fn sign(function: Function) -> &'static str {
    match function {
        Function::Sine => "sin",
        Function::Cosine => "cos",
        Function::Tangent => "tan",
        Function::ArcSine => "sin⁻¹",
        Function::ArcCosine => "cos⁻¹",
        Function::ArcTangent => "tan⁻¹",
        Function::SquareRoot => "√",
        Function::Absolute => "abs",
    }
}

/// Digits with a power of ten written out: `1.2·10³`.
fn shown(digits: &str) -> String {
    match digits.split_once('e') {
        Some((mantissa, exponent)) => {
            let raised = superscript(exponent).unwrap_or_default();
            format!("{mantissa}·10{raised}")
        }
        None => digits.to_owned(),
    }
}
