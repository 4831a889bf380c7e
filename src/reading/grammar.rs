//! The operator grammar. The only file that uses meval.
//!
//! meval gives the structure of operators as reverse Polish notation; leaves and brackets are
//! handed to it under invented names (`_0`, `_1`…) and our own tree is built from what comes back.
//! Its arithmetic, functions and constants are not used.
//!
//! ```text
//! sum     = product (("+" | "−") product)*
//! product = sign (("·" | "/") sign)*            left to right
//! sign    = "−" sign | power
//! power   = leaf ("^" sign)?                    right to left; −2² is −(2²)
//! leaf    = literal | name | bracket | function bracket
//! ```

use super::tree::{Function, Node, Operator, Tree};
use crate::text::Span;
use meval::shunting_yard::to_rpn;
use meval::tokenizer::{Operation, Token, tokenize};

/// A piece of an expression in which nothing is implied any more.
#[derive(Clone, Debug)]
pub(super) enum Item {
    /// A literal or name.
    Leaf(Tree),
    /// An operator between two expressions.
    Binary(Operator),
    /// A minus before an expression, and where it stands.
    Negative(Span),
    /// An opening bracket, of a function or of none, and the stretch up to its closing.
    Open(Option<Function>, Span),
    /// A closing bracket.
    Close,
}

/// The tree of an expression; `None` if it is not well formed.
pub(super) fn tree_of(items: &[Item]) -> Option<Tree> {
    let text = written(items);
    // meval panics on blank text.
    if text.trim().is_empty() {
        return None;
    }
    let polish = to_rpn(&tokenize(text.trim()).ok()?).ok()?;
    let mut stack: Vec<Tree> = Vec::new();
    for token in polish {
        let tree = match token {
            Token::Var(name) => match items.get(place(&name)?)? {
                Item::Leaf(tree) => tree.clone(),
                _ => return None,
            },
            Token::Func(name, Some(1)) => match items.get(place(&name)?)? {
                Item::Open(function, span) => bracket(*function, *span, stack.pop()?),
                _ => return None,
            },
            Token::Unary(Operation::Minus) => negative(items, stack.pop()?),
            Token::Binary(operation) => {
                let right = stack.pop()?;
                binary(operator(operation)?, stack.pop()?, right)
            }
            _ => return None,
        };
        stack.push(tree);
    }
    let tree = stack.pop()?;
    stack.is_empty().then_some(tree)
}

fn written(items: &[Item]) -> String {
    let mut text = String::new();
    for (place, item) in items.iter().enumerate() {
        match item {
            Item::Leaf(_) => text.push_str(&format!(" _{place}")),
            Item::Binary(Operator::Add) => text.push_str(" +"),
            Item::Binary(Operator::Subtract) | Item::Negative(_) => text.push_str(" -"),
            Item::Binary(Operator::Multiply) => text.push_str(" *"),
            Item::Binary(Operator::Divide) => text.push_str(" /"),
            Item::Binary(Operator::Power) => text.push_str(" ^"),
            Item::Open(..) => text.push_str(&format!(" _{place}(")),
            Item::Close => text.push(')'),
        }
    }
    text
}

fn place(name: &str) -> Option<usize> {
    name.strip_prefix('_')?.parse().ok()
}

fn operator(operation: Operation) -> Option<Operator> {
    Some(match operation {
        Operation::Plus => Operator::Add,
        Operation::Minus => Operator::Subtract,
        Operation::Times => Operator::Multiply,
        Operation::Div => Operator::Divide,
        Operation::Pow => Operator::Power,
        Operation::Rem => return None,
    })
}

fn bracket(function: Option<Function>, span: Span, inner: Tree) -> Tree {
    let node = match function {
        Some(function) => Node::Call(function, Box::new(inner)),
        None => inner.node,
    };
    Tree { node, span }
}

fn binary(operator: Operator, left: Tree, right: Tree) -> Tree {
    let span = left.span.join(right.span);
    Tree {
        node: Node::Binary(operator, Box::new(left), Box::new(right)),
        span,
    }
}

/// The notation does not say which minus it was: it is the last one before the operand.
fn negative(items: &[Item], inner: Tree) -> Tree {
    let minus = items.iter().rev().find_map(|item| match item {
        Item::Negative(span) if span.end <= inner.span.start => Some(*span),
        _ => None,
    });
    let span = minus.unwrap_or(inner.span).join(inner.span);
    Tree {
        node: Node::Negative(Box::new(inner)),
        span,
    }
}
