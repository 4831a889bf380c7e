//! Products of typed numbers alone in a line that is lifted: each is worked out once for every
//! choice of what its numbers stand for, however often the rest of the line is.

use crate::key::CHOICES;
use crate::reading::{Leaf, Literal, Mismatch, Node, Operator, Tree, Value, evaluate};
use crate::units::Written;
use std::cell::RefCell;

/// The numbers of the leaves that stand for a group; no line has as many literals.
const FIRST: usize = 1 << 20;

/// The sides of a line with a leaf in the place of every product of numbers alone.
pub(super) struct Grouped {
    pub(super) sides: Vec<Tree>,
    groups: Vec<Group>,
}

/// A product, quotient, power or function of numbers alone.
struct Group {
    tree: Tree,
    /// The places of its numbers' meanings, each once, with how many there are.
    slots: Vec<(usize, usize)>,
    /// Its value for each choice of meanings, and at each choice of numbers.
    values: RefCell<Vec<Option<Value>>>,
}

impl Grouped {
    /// Puts leaves in the place of the products. `slots` are the numbers of the literals and the
    /// places of their meanings, of which `counts` says how many there are.
    pub(super) fn of(sides: &[&Tree], slots: &[(usize, usize)], counts: &[usize]) -> Grouped {
        let mut grouped = Grouped {
            sides: Vec::new(),
            groups: Vec::new(),
        };
        for side in sides {
            let side = grouped.replace(side, slots, counts);
            grouped.sides.push(side);
        }
        grouped
    }

    fn replace(&mut self, tree: &Tree, slots: &[(usize, usize)], counts: &[usize]) -> Tree {
        if is_group(tree) {
            return self.leaf(tree, slots, counts);
        }
        let mut inside = |part: &Tree| Box::new(self.replace(part, slots, counts));
        let node = match &tree.node {
            Node::Negative(part) => Node::Negative(inside(part)),
            Node::Call(function, part) => Node::Call(*function, inside(part)),
            Node::Binary(operator, left, right) => {
                Node::Binary(*operator, inside(left), inside(right))
            }
            leaf => leaf.clone(),
        };
        Tree {
            node,
            span: tree.span,
        }
    }

    fn leaf(&mut self, tree: &Tree, slots: &[(usize, usize)], counts: &[usize]) -> Tree {
        let mut own: Vec<(usize, usize)> = Vec::new();
        for place in tree.literals() {
            let slot = slots
                .iter()
                .find(|(index, _)| *index == place.literal.index);
            if let Some((_, slot)) = slot
                && own.iter().all(|(known, _)| known != slot)
            {
                own.push((*slot, counts[*slot]));
            }
        }
        let combinations: usize = own.iter().map(|(_, count)| count).product();
        let index = FIRST + self.groups.len();
        self.groups.push(Group {
            tree: tree.clone(),
            slots: own,
            values: RefCell::new(vec![None; combinations * CHOICES]),
        });
        Tree {
            node: Node::Literal(stand_in(index)),
            span: tree.span,
        }
    }

    /// The value of a group's leaf at one choice of numbers; `None` for any other literal. `leaf`
    /// gives the values of its numbers with the meanings chosen.
    pub(super) fn value(
        &self,
        literal: &Literal,
        (chosen, choice): (&[usize], usize),
        leaf: &mut dyn FnMut(Leaf<'_>) -> Value,
    ) -> Option<Value> {
        let group = self.groups.get(literal.index.checked_sub(FIRST)?)?;
        let mixed = |at: usize, (slot, count): &(usize, usize)| at * count + chosen[*slot];
        let at = group.slots.iter().fold(0, mixed) * CHOICES + choice;
        if let Some(known) = group.values.borrow()[at] {
            return Some(known);
        }
        // Without a value, the line has none.
        let none = |_: Mismatch| Value::bare(f64::NAN);
        let value = evaluate(&group.tree, leaf).unwrap_or_else(none);
        group.values.borrow_mut()[at] = Some(value);
        Some(value)
    }
}

/// A leaf that stands for a group.
fn stand_in(index: usize) -> Literal {
    Literal {
        index,
        value: f64::NAN,
        typed: f64::NAN,
        digits: String::new(),
        written: Written {
            significant: 1,
            last_place: 1.0,
        },
        unit: None,
        unit_alone: false,
    }
}

/// True for numbers, and nothing else, in what is worked out and no sum: of a sum the terms are seen
/// one by one.
fn is_group(tree: &Tree) -> bool {
    let no_sum = matches!(
        tree.node,
        Node::Binary(Operator::Multiply | Operator::Divide | Operator::Power, ..) | Node::Call(..)
    );
    no_sum && tree.names().is_empty()
}
