//! How a line was read, written as one line of mathematics that has only one meaning.

use super::tree::{Function, Literal, Node, Operator, Tree, Vocabulary};

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
    Layout { vocabulary }.tree(tree, false).0
}

struct Layout<'a> {
    vocabulary: &'a Vocabulary,
}

impl Layout<'_> {
    fn tree(&self, tree: &Tree, angle: bool) -> (String, Grip) {
        match &tree.node {
            Node::Literal(literal) => self.literal(literal, angle),
            Node::Name(id) => {
                let name = self.vocabulary.name(*id);
                let text = name.map_or_else(|| "?".to_owned(), |name| name.symbol.shown());
                (text, Grip::Leaf)
            }
            Node::Negative(inner) => {
                let inner = self.held(inner, Grip::Product, angle);
                (format!("−{inner}"), Grip::Sign)
            }
            Node::Binary(operator, left, right) => self.binary(*operator, left, right, angle),
            Node::Call(function, inner) => {
                let inner = self.tree(inner, function.takes_angle()).0;
                (format!("{}({inner})", sign(*function)), Grip::Leaf)
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

    fn binary(&self, operator: Operator, left: &Tree, right: &Tree, angle: bool) -> (String, Grip) {
        match operator {
            Operator::Add | Operator::Subtract => {
                let sign = if operator == Operator::Add {
                    '+'
                } else {
                    '−'
                };
                // A sum on the right of a sign keeps its brackets; so does a minus.
                let left = self.held(left, Grip::Sum, angle);
                let right = self.held(right, Grip::Product, angle);
                (format!("{left} {sign} {right}"), Grip::Sum)
            }
            Operator::Multiply => {
                if let Node::Literal(literal) = &right.node
                    && literal.unit_alone
                {
                    let left = self.bracketed(left);
                    let unit = self.literal(literal, false).0;
                    let gap = if unit == "°" { "" } else { " " };
                    return (format!("{left}{gap}{}", unit.trim_start()), Grip::Product);
                }
                let left = self.factor(left, !matches!(right.node, Node::Literal(_)));
                let right = self.factor_right(right);
                (format!("{left}·{right}"), Grip::Product)
            }
            Operator::Divide => {
                let left = self.factor(left, true);
                let right = self.held(right, Grip::Power, false);
                (format!("{left}/{right}"), Grip::Product)
            }
            Operator::Power => {
                let base = self.held(left, Grip::Leaf, false);
                (format!("{base}{}", self.exponent(right)), Grip::Power)
            }
        }
    }

    /// A left factor. A unit before a name would run into it: `(9.8 N)·m`. A quotient is kept
    /// apart, since many read `171/2·x` as 171/(2·x).
    fn factor(&self, tree: &Tree, before_name: bool) -> String {
        if matches!(tree.node, Node::Binary(Operator::Divide, ..)) {
            return self.held(tree, Grip::Leaf, false);
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
    fn factor_right(&self, tree: &Tree) -> String {
        match &tree.node {
            Node::Literal(_) => self.tree(tree, false).0,
            _ => self.held(tree, Grip::Power, false),
        }
    }

    fn exponent(&self, tree: &Tree) -> String {
        if let Node::Literal(literal) = &tree.node
            && literal.unit.is_none()
            && literal.digits.len() <= 3
            && let Some(raised) = superscript(&literal.digits)
        {
            return raised;
        }
        format!("^{}", self.held(tree, Grip::Leaf, false))
    }

    /// In brackets unless it holds together at least so tightly.
    fn held(&self, tree: &Tree, least: Grip, angle: bool) -> String {
        let (text, grip) = self.tree(tree, angle);
        if grip >= least {
            text
        } else {
            format!("({text})")
        }
    }

    /// In brackets always, so that a unit after it is a unit of the whole.
    fn bracketed(&self, tree: &Tree) -> String {
        format!("({})", self.tree(tree, false).0)
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

/// A whole number as superscript; `None` where it is not one.
fn superscript(digits: &str) -> Option<String> {
    const RAISED: [char; 10] = ['⁰', '¹', '²', '³', '⁴', '⁵', '⁶', '⁷', '⁸', '⁹'];
    digits
        .chars()
        .map(|c| match c {
            '-' => Some('⁻'),
            c => c.to_digit(10).map(|digit| RAISED[digit as usize]),
        })
        .collect()
}
