//! Random systems of bodies by seed: for the judge in Python, for laws, and for measuring.
//!
//! One to three bodies (straight, bent, blocks known by coordinates, knots), every kind of load,
//! rope and hold. Holds are counted so that about half the systems have exactly one answer; the
//! rest are indeterminate, mechanisms, push at ropes, pull at contacts, slip, topple or nearly do
//! one of these. Directions are either all upright, level or three-four-five (so that every number
//! is rational) or anything.

mod holds;
mod loads;
mod maker;
mod near;
mod stream;
mod write;

pub(crate) use stream::Stream;
pub(crate) use write::{outcome, written};

use holds::Flipped;
use leverwright::statics::{Unsolvable, solve_system};
use leverwright::system::System;
use maker::Maker;

/// What a system of the list is like.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Family {
    /// Holds counted to one answer.
    Counted,
    /// More holds than that.
    Over,
    /// Fewer.
    Under,
    /// Lines that nearly meet or are nearly parallel.
    Near,
}

/// The system at a place in the list of a seed.
pub(crate) fn system(seed: u64, index: u64) -> (Family, System) {
    let mut stream = Stream::new(seed, index);
    loop {
        let family = match stream.weighted(&[76, 10, 10, 4]) {
            0 => Family::Counted,
            1 => Family::Over,
            2 => Family::Under,
            _ => Family::Near,
        };
        if let Some(found) = attempt(&mut stream, family) {
            return (family, found);
        }
    }
}

/// One attempt; nothing where a direction points nowhere or a name comes twice.
fn attempt(stream: &mut Stream, family: Family) -> Option<System> {
    let square = stream.chance(35);
    let mut maker = Maker::new(stream, square);
    if family == Family::Near {
        near::fill(&mut maker);
        return maker.system();
    }
    maker.bodies();
    maker.loads();
    maker.holds(family);
    let mend = maker.stream.chance(80);
    let mut system = maker.system()?;
    for _ in 0..if mend { 16 } else { 0 } {
        let Err(trouble) = solve_system(&system, &system.values(), system.gravity()) else {
            break;
        };
        let flipped = match &trouble {
            Unsolvable::RopeWouldPush { rope, .. } => maker.flip_rope(rope),
            Unsolvable::ContactWouldPull { support, .. } => maker.flip_hold(support),
            Unsolvable::WouldSlip {
                contact,
                needed_n,
                most_n,
            } => maker.roughen(contact, needed_n / most_n),
            Unsolvable::WouldTopple {
                base,
                off_m,
                half_m,
            } => maker.widen(base, off_m / half_m),
            _ => Flipped::No,
        };
        if flipped == Flipped::No {
            break;
        }
        system = maker.system()?;
    }
    Some(system)
}

/// A beam at a hinge and a strut with so many loads of every kind.
pub(crate) fn with_loads(count: usize) -> System {
    let mut stream = Stream::new(1, count as u64);
    loop {
        let mut maker = Maker::new(&mut stream, false);
        maker.beam_with(count);
        if let Some(system) = maker.system()
            && solve_system(&system, &system.values(), system.gravity()).is_ok()
        {
            return system;
        }
    }
}
