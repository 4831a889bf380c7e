//! What acts on bodies.

use super::{Bearing, BodyId, Lamina, LaminaMass, Spot, System};
use crate::problem::{GivenId, Place};
use crate::text::Symbol;

/// Which action.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum ActId {
    /// The weight at this place in [`super::Parts::weights`].
    Weight(usize),
    /// The load at this place in [`super::Parts::loads`].
    Load(usize),
    /// The rope at this place in [`super::Parts::cords`].
    Cord(usize),
    /// The hold at this place in [`super::Parts::holds`].
    Hold(usize),
}

/// A body's own weight, or a part of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Weight {
    /// The name of its force: `W_b`.
    pub symbol: Symbol,
    /// What it is the weight of.
    pub noun: String,
    /// The body.
    pub body: BodyId,
    /// Where it acts and how large it is.
    pub kind: WeightKind,
}

/// Where a weight acts and how large it is.
#[derive(Clone, Debug, PartialEq)]
pub enum WeightKind {
    /// A mass whose centre is told.
    Point {
        /// Where it acts: the centre of mass of that part.
        at: Spot,
        /// The mass.
        mass: GivenId,
    },
    /// A lamina, whose centre of mass follows from its shapes.
    Lamina(Lamina),
}

/// Which way a couple turns.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Turning {
    /// Anticlockwise: positive.
    Anticlockwise,
    /// Clockwise.
    Clockwise,
}

impl Turning {
    /// +1 anticlockwise, −1 clockwise.
    pub fn sign(self) -> f64 {
        match self {
            Turning::Anticlockwise => 1.0,
            Turning::Clockwise => -1.0,
        }
    }
}

/// How a load acts.
#[derive(Clone, Debug, PartialEq)]
pub enum LoadKind {
    /// A hung or standing mass.
    Mass {
        /// Where.
        at: Spot,
        /// Its mass.
        mass: GivenId,
    },
    /// A given force, such as a push, or a spring's.
    Force {
        /// Where.
        at: Spot,
        /// Its size, in newtons.
        size: GivenId,
        /// Which way it acts on the body.
        bearing: Bearing,
    },
    /// A given couple.
    Couple {
        /// Its size, in newton metres.
        size: GivenId,
        /// Which way it turns.
        turning: Turning,
    },
    /// A load spread along a leg, in newtons a metre, changing evenly from its first to its last
    /// value. Without one of them it begins or ends at nothing (a triangle).
    Spread {
        /// Which leg of the body.
        leg: usize,
        /// Where it begins.
        from: Place,
        /// Where it ends.
        to: Place,
        /// Its value where it begins.
        first: Option<GivenId>,
        /// Its value where it ends.
        last: Option<GivenId>,
        /// Which way it acts.
        bearing: Bearing,
    },
}

/// What a body carries.
#[derive(Clone, Debug, PartialEq)]
pub struct Load {
    /// The name of its force: `W_1`.
    pub symbol: Symbol,
    /// What it is: "lamp".
    pub noun: String,
    /// The body.
    pub body: BodyId,
    /// How it acts.
    pub kind: LoadKind,
}

/// Where a rope pulls.
#[derive(Clone, Debug, PartialEq)]
pub struct CordEnd {
    /// The body.
    pub body: BodyId,
    /// Where it is tied, or where a smooth pulley is fixed over which it runs.
    pub at: Spot,
    /// Which way it pulls at the body.
    pub bearing: Bearing,
}

/// A rope: it only pulls, with the same tension everywhere.
#[derive(Clone, Debug, PartialEq)]
pub struct Cord {
    /// The name of its tension: `T`.
    pub symbol: Symbol,
    /// What it is called: "rope".
    pub noun: String,
    /// Where it pulls: one end at a body, both where it joins two, both parts at a pulley.
    pub ends: Vec<CordEnd>,
}

/// What is known of friction at a contact.
#[derive(Clone, Debug, PartialEq)]
pub enum Friction {
    /// There is friction, as large as needed.
    AsNeeded,
    /// There is friction up to this coefficient times the push; what is needed is compared.
    UpTo(GivenId),
    /// It is about to slip: friction is this coefficient times the push, against the way in which
    /// it would slip.
    Limiting {
        /// The coefficient.
        coefficient: GivenId,
        /// Which way friction acts on the body.
        bearing: Bearing,
    },
}

/// What a hold can do.
#[derive(Clone, Debug, PartialEq)]
pub enum HoldKind {
    /// A hinge or pin: a force in any direction.
    Hinge,
    /// A roller, peg, edge or smooth contact: a push one way.
    Push(Bearing),
    /// A strut, link or two-force member, or any unknown force along a known line: either sense.
    Line(Bearing),
    /// A built-in end: a force in any direction and a couple.
    BuiltIn,
    /// A rough contact: a push one way, and friction square to it.
    Rough {
        /// Which way it pushes.
        push: Bearing,
        /// What is known of its friction.
        friction: Friction,
    },
    /// The rough contact of a flat base of some width: the push acts somewhere within it.
    Base {
        /// Which way it pushes.
        push: Bearing,
        /// What is known of its friction.
        friction: Friction,
        /// The width; the hold's place is its middle.
        width: GivenId,
    },
    /// An unknown couple.
    Couple,
}

impl HoldKind {
    /// True if it can turn a body by itself.
    pub(super) fn turns(&self) -> bool {
        matches!(
            self,
            HoldKind::BuiltIn | HoldKind::Base { .. } | HoldKind::Couple
        )
    }

    /// The directions in which a rough contact pushes, and in which its friction acts if that is
    /// told: its force as a whole has none.
    pub(super) fn contact_bearings(&self) -> Vec<&Bearing> {
        let (HoldKind::Rough { push, friction } | HoldKind::Base { push, friction, .. }) = self
        else {
            return Vec::new();
        };
        match friction {
            Friction::Limiting { bearing, .. } => vec![push, bearing],
            Friction::AsNeeded | Friction::UpTo(_) => vec![push],
        }
    }
}

/// What holds a body, or joins two.
#[derive(Clone, Debug, PartialEq)]
pub struct Hold {
    /// The name of its force: `H`.
    pub symbol: Symbol,
    /// What it is called: "hinge".
    pub noun: String,
    /// The body that it acts on.
    pub body: BodyId,
    /// The body that it reacts on with the reverse, if it joins two.
    pub by: Option<BodyId>,
    /// Where it is.
    pub at: Spot,
    /// What it can do.
    pub kind: HoldKind,
}

/// What is known of an action's line.
#[derive(Clone, Debug, PartialEq)]
pub enum Line {
    /// A force this way.
    Known(Bearing),
    /// A force in a direction that is to be found.
    Open,
    /// A couple.
    Couple(Option<Turning>),
}

/// What is known of an action's size.
#[derive(Clone, Debug, PartialEq)]
pub enum Size {
    /// The weight of this mass.
    Weight(GivenId),
    /// The weight of the lamina at this place in [`super::Parts::weights`], whose mass follows
    /// from its shapes.
    Lamina(usize),
    /// A given force or couple.
    Given(GivenId),
    /// A spread load: the mean of its end values over its length.
    Spread {
        /// The leg's length.
        length: GivenId,
        /// Where it begins.
        from: Place,
        /// Where it ends.
        to: Place,
        /// Its value where it begins.
        first: Option<GivenId>,
        /// Its value where it ends.
        last: Option<GivenId>,
    },
    /// To be found.
    Unknown,
}

/// One action seen alike with all others.
#[derive(Clone, Debug, PartialEq)]
pub struct Act<'a> {
    /// Which.
    pub id: ActId,
    /// Its name.
    pub symbol: &'a Symbol,
    /// What makes it.
    pub noun: &'a str,
    /// Where it acts, and how.
    pub on: Vec<Effect>,
    /// How large.
    pub size: Size,
}

/// What an action does at one place.
#[derive(Clone, Debug, PartialEq)]
pub struct Effect {
    /// On which body.
    pub body: BodyId,
    /// Where.
    pub at: Spot,
    /// Along which line.
    pub line: Line,
    /// True if the body meets the reverse of what the action is named for.
    pub reversed: bool,
}

impl Effect {
    fn of(body: BodyId, at: &Spot, line: Line) -> Effect {
        Effect {
            body,
            at: at.clone(),
            line,
            reversed: false,
        }
    }
}

impl System {
    /// Every action: weights first, then loads, ropes, holds.
    pub fn acts(&self) -> Vec<Act<'_>> {
        let parts = self.parts();
        let weights = (0..parts.weights.len()).map(ActId::Weight);
        let loads = (0..parts.loads.len()).map(ActId::Load);
        let cords = (0..parts.cords.len()).map(ActId::Cord);
        let holds = (0..parts.holds.len()).map(ActId::Hold);
        let ids = weights.chain(loads).chain(cords).chain(holds);
        ids.filter_map(|id| self.act(id)).collect()
    }

    /// The action with this id.
    pub fn act(&self, id: ActId) -> Option<Act<'_>> {
        let parts = self.parts();
        Some(match id {
            ActId::Weight(index) => weight_act(index, parts.weights.get(index)?),
            ActId::Load(index) => self.load_act(index, parts.loads.get(index)?),
            ActId::Cord(index) => cord_act(index, parts.cords.get(index)?),
            ActId::Hold(index) => hold_act(index, parts.holds.get(index)?),
        })
    }

    fn load_act<'a>(&self, index: usize, load: &'a Load) -> Act<'a> {
        let (effect, size) = match &load.kind {
            LoadKind::Mass { at, mass } => (
                Effect::of(load.body, at, Line::Known(Bearing::Down)),
                Size::Weight(*mass),
            ),
            LoadKind::Force { at, size, bearing } => (
                Effect::of(load.body, at, Line::Known(bearing.clone())),
                Size::Given(*size),
            ),
            LoadKind::Couple { size, turning } => (
                Effect::of(load.body, &Spot::Origin, Line::Couple(Some(*turning))),
                Size::Given(*size),
            ),
            LoadKind::Spread {
                leg,
                from,
                to,
                first,
                last,
                bearing,
            } => (
                Effect::of(
                    load.body,
                    &Spot::Resultant(index),
                    Line::Known(bearing.clone()),
                ),
                Size::Spread {
                    length: self
                        .leg(load.body, *leg)
                        .map_or(GivenId(usize::MAX), |leg| leg.length),
                    from: *from,
                    to: *to,
                    first: *first,
                    last: *last,
                },
            ),
        };
        Act {
            id: ActId::Load(index),
            symbol: &load.symbol,
            noun: &load.noun,
            on: vec![effect],
            size,
        }
    }
}

fn weight_act(index: usize, weight: &Weight) -> Act<'_> {
    let (at, size) = match &weight.kind {
        WeightKind::Point { at, mass } => (at.clone(), Size::Weight(*mass)),
        WeightKind::Lamina(lamina) => {
            let size = match lamina.mass {
                LaminaMass::Whole(mass) => Size::Weight(mass),
                LaminaMass::PerArea(_) | LaminaMass::OfPieces => Size::Lamina(index),
            };
            (Spot::Centroid(index), size)
        }
    };
    Act {
        id: ActId::Weight(index),
        symbol: &weight.symbol,
        noun: &weight.noun,
        on: vec![Effect::of(weight.body, &at, Line::Known(Bearing::Down))],
        size,
    }
}

fn cord_act(index: usize, cord: &Cord) -> Act<'_> {
    let ends = cord.ends.iter();
    Act {
        id: ActId::Cord(index),
        symbol: &cord.symbol,
        noun: &cord.noun,
        on: ends
            .map(|end| Effect::of(end.body, &end.at, Line::Known(end.bearing.clone())))
            .collect(),
        size: Size::Unknown,
    }
}

fn hold_act(index: usize, hold: &Hold) -> Act<'_> {
    let line = match &hold.kind {
        HoldKind::Hinge | HoldKind::BuiltIn | HoldKind::Rough { .. } | HoldKind::Base { .. } => {
            Line::Open
        }
        HoldKind::Push(bearing) | HoldKind::Line(bearing) => Line::Known(bearing.clone()),
        HoldKind::Couple => Line::Couple(None),
    };
    let mut on = vec![Effect::of(hold.body, &hold.at, line.clone())];
    on.extend(hold.by.map(|by| Effect {
        reversed: true,
        ..Effect::of(by, &hold.at, line)
    }));
    Act {
        id: ActId::Hold(index),
        symbol: &hold.symbol,
        noun: &hold.noun,
        on,
        size: Size::Unknown,
    }
}
