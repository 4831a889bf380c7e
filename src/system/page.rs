//! The printed page of a system: what a problem of one body says of itself.

use super::System;
use crate::problem::{Body, GivenId, Parts, Place, Side, Tilt};
use crate::text::Symbol;

impl System {
    /// Its words and numbers around its first body, which lies bare and level: no force stands on the
    /// page, and the length is the first given, whatever that is.
    pub fn page(&self) -> Parts {
        let parts = self.parts();
        let noun = parts.bodies.first().map(|body| body.noun.clone());
        Parts {
            title: parts.title.clone(),
            statement: parts.statement.clone(),
            caution: parts.caution.clone(),
            givens: parts.givens.clone(),
            body: Body {
                noun: noun.unwrap_or_default(),
                length: GivenId(0),
                mass: None,
                weight_symbol: Symbol::new("W"),
                centre: Place::Middle,
                tilt: Tilt::Level,
                towards: Side::Right,
            },
            supports: Vec::new(),
            ropes: Vec::new(),
            loads: Vec::new(),
            gravity: parts.gravity,
            accepted_gravity: parts.accepted_gravity.clone(),
            figures: parts.figures,
        }
    }
}
