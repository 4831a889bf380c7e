//! Mentions gathered force by force, each with its own place and way.

use super::mention::Mention;
use super::place::{Where, acts_at, is_on};
use super::way::Way;
use super::{Invention, Named, Said};
use crate::problem::{ForceId, Problem};

/// What a force was called, before it is clear which it is.
#[derive(Clone, Copy, PartialEq)]
enum Subject {
    Force(ForceId),
    Pull,
    Reaction,
    Weight,
    Body,
    Any,
    Invented(Invention),
}

/// What is said of one force.
#[derive(Default)]
struct Group {
    subject: Option<Subject>,
    place: Option<Where>,
    way: Way,
    number: Option<f64>,
}

/// Small words that change how the next mention is taken.
#[derive(Default)]
struct Before {
    at: bool,
    from: bool,
    of: bool,
    towards: bool,
    along: bool,
    denied: bool,
    above: Option<bool>,
    /// "The end of …": what follows only says whose place it was.
    whose: bool,
}

struct Gathering<'a> {
    problem: &'a Problem,
    groups: Vec<Group>,
    before: Before,
    /// The length just said: "1.2 m from the tip".
    length: Option<f64>,
    /// The last mention that says something was a place.
    place_last: bool,
    /// A comma or "and" since the subject.
    parted: bool,
}

/// What a line says, force by force.
pub(super) fn gather(problem: &Problem, mentions: &[Mention]) -> Vec<Said> {
    let mut gathering = Gathering {
        problem,
        groups: vec![Group::default()],
        before: Before::default(),
        length: None,
        place_last: false,
        parted: false,
    };
    for mention in mentions {
        gathering.take(*mention);
    }
    gathering.stop();
    let said = gathering
        .groups
        .iter()
        .map(|group| resolved(problem, group));
    said.collect()
}

impl Gathering<'_> {
    fn take(&mut self, mention: Mention) {
        if let Some(subject) = self.subject(mention) {
            self.force(subject);
            self.place_last = false;
            return;
        }
        match mention {
            Mention::At => self.before.at = true,
            Mention::From => self.before.from = true,
            Mention::Of => {
                self.before.of = true;
                self.before.whose = self.place_last;
            }
            Mention::Towards => self.before.towards = true,
            Mention::Along => self.before.along = true,
            Mention::No => self.before.denied = true,
            Mention::Above => self.before.above = Some(true),
            Mention::Below => self.before.above = Some(false),
            Mention::Filler => {}
            Mention::Break => {
                self.close();
                self.parted = true;
            }
            Mention::Stop => {
                self.stop();
                self.parted = true;
                self.groups.push(Group::default());
            }
            Mention::Unknown => self.unknown(),
            other => self.detail(other),
        }
    }

    /// A place, a number or a direction.
    fn detail(&mut self, mention: Mention) {
        let place_last = matches!(mention, Mention::Place(_) | Mention::Length(_));
        match mention {
            Mention::Place(metres) => self.place(metres),
            Mention::There => self.put(Where::There),
            Mention::Length(metres) => {
                self.put(Where::At(metres));
                self.length = Some(metres);
            }
            Mention::Number(number) => {
                self.length = Some(number);
                let group = self.group();
                group.number = group.number.or(Some(number));
            }
            Mention::Degrees(degrees) => {
                let way = &mut self.group().way;
                way.degrees = way.degrees.or(Some((degrees, None)));
            }
            Mention::Line(line) => {
                let above = self.before.above.take();
                let way = &mut self.group().way;
                match &mut way.degrees {
                    Some((_, from)) if from.is_none() => {
                        *from = Some(line);
                        way.up = way.up.or(above);
                    }
                    _ => way.line = way.line.or(Some(line)),
                }
            }
            Mention::Up | Mention::Down => {
                let way = &mut self.group().way;
                way.up = way.up.or(Some(mention == Mention::Up));
            }
            Mention::Left | Mention::Right => {
                let way = &mut self.group().way;
                way.right = way.right.or(Some(mention == Mention::Right));
            }
            Mention::AlongRope => self.group().way.along = true,
            Mention::Open => self.group().way.open = true,
            _ => return,
        }
        self.before.at = false;
        self.before.towards = false;
        self.place_last = place_last;
    }

    /// A word that is not known may still be what a rope runs to.
    fn unknown(&mut self) {
        let rope = matches!(
            self.group().subject,
            Some(Subject::Force(ForceId::Rope(_)) | Subject::Pull)
        );
        if std::mem::take(&mut self.before.towards) && rope {
            self.group().way.along = true;
        }
    }

    /// The end of a clause: a small word that nothing followed.
    fn close(&mut self) {
        let before = std::mem::take(&mut self.before);
        let way = &mut self.group().way;
        way.along |= before.along;
        way.up = way.up.or(before.above);
    }

    /// The end of a sentence. One that names no force speaks of the force before it.
    fn stop(&mut self) {
        self.close();
        let nameless = self
            .groups
            .last()
            .is_some_and(|group| group.subject.is_none());
        if !nameless || self.groups.len() < 2 {
            return;
        }
        if let Some(more) = self.groups.pop() {
            let group = self.group();
            group.place = group.place.or(more.place);
            group.number = group.number.or(more.number);
            group.way = group.way.and(more.way);
        }
    }

    /// A named place: where the force acts, or where a length is measured from.
    fn place(&mut self, metres: f64) {
        let measured = self.before.from || self.before.above.is_some();
        self.before.from = false;
        self.before.above = None;
        if std::mem::take(&mut self.before.towards) {
            self.group().way.along_body = true;
            return;
        }
        match self.length.take().filter(|_| measured) {
            Some(length) => {
                let at = (metres - length).abs();
                self.group().place = Some(Where::At(at));
            }
            None => self.put(Where::At(metres)),
        }
    }

    fn put(&mut self, place: Where) {
        let group = self.group();
        group.place = group.place.or(Some(place));
    }

    /// Something that makes a force: which one is named, or a place or a direction.
    fn force(&mut self, subject: Subject) {
        let before = std::mem::take(&mut self.before);
        let length = self.length.take();
        let of = before.of || before.from;
        if before.denied || before.whose {
            return;
        }
        if before.along {
            let placed = self.group().place.is_some();
            let way = &mut self.group().way;
            way.along |= matches!(subject, Subject::Force(ForceId::Rope(_)) | Subject::Pull);
            way.along_body |= subject == Subject::Body && !placed;
            return;
        }
        if before.towards {
            self.towards(subject);
            return;
        }
        let measured = before.from || before.above.is_some();
        if before.at || before.above.is_some() || (measured && length.is_some()) {
            if let Some(metres) = self.place_of(subject) {
                self.length = length;
                self.before.from = measured;
                self.place(metres);
            }
            return;
        }
        self.name(subject, of);
    }

    fn towards(&mut self, subject: Subject) {
        let of = self.group().subject;
        let way = &mut self.group().way;
        match (of, subject) {
            (Some(Subject::Force(ForceId::Rope(_)) | Subject::Pull), Subject::Invented(_)) => {
                way.along = true;
            }
            (_, Subject::Invented(_) | Subject::Weight) => way.up = way.up.or(Some(false)),
            _ => way.along_body = true,
        }
    }

    /// Joins a name to the force at hand, or begins another force.
    fn name(&mut self, subject: Subject, of: bool) {
        let parted = std::mem::take(&mut self.parted);
        // A force that has its place and its way is complete: the next name begins another.
        let complete = self.group().place.is_some() && self.group().way.has_side();
        let Some(current) = self.group().subject else {
            self.group().subject = Some(subject);
            return;
        };
        if complete && current != subject {
            self.groups.push(Group {
                subject: Some(subject),
                ..Group::default()
            });
            return;
        }
        match joined(current, subject, of, parted) {
            Some(joined) => self.group().subject = Some(joined),
            None => self.groups.push(Group {
                subject: Some(subject),
                ..Group::default()
            }),
        }
    }

    fn group(&mut self) -> &mut Group {
        if self.groups.is_empty() {
            self.groups.push(Group::default());
        }
        let last = self.groups.len() - 1;
        &mut self.groups[last]
    }

    fn subject(&self, mention: Mention) -> Option<Subject> {
        Some(match mention {
            Mention::Force(force) => Subject::Force(force),
            Mention::Rope => of_pull(self.problem),
            Mention::Pull => Subject::Pull,
            Mention::Hinge => of_reaction(self.problem),
            Mention::Reaction => Subject::Reaction,
            Mention::Weight => Subject::Weight,
            Mention::OwnWeight => own(self.problem),
            Mention::Body => Subject::Body,
            Mention::AnyForce => Subject::Any,
            // A square push is that of a roller, where one holds the body.
            Mention::Invented(Invention::Contact) if roller(self.problem).is_some() => {
                Subject::Reaction
            }
            Mention::Invented(kind) => Subject::Invented(kind),
            _ => return None,
        })
    }

    /// The place by which a force is meant: "at the hinge", "where the dummy hangs".
    fn place_of(&self, subject: Subject) -> Option<f64> {
        let force = match subject {
            Subject::Force(ForceId::OwnWeight) => return None,
            Subject::Force(force) => force,
            Subject::Reaction => match of_reaction(self.problem) {
                Subject::Force(force) => force,
                _ => return None,
            },
            _ => return None,
        };
        let at = self.problem.force(force)?.at;
        Some(self.problem.distance(at, &self.problem.values()))
    }
}

/// Two names of one force as one, or `None` where the second begins another force.
fn joined(current: Subject, next: Subject, of: bool, parted: bool) -> Option<Subject> {
    use Subject::{Any, Body, Force, Invented, Pull, Reaction, Weight};
    let weight = |force: ForceId| matches!(force, ForceId::OwnWeight | ForceId::Load(_));
    let support = |subject: Subject| matches!(subject, Force(ForceId::Support(_)) | Reaction);
    match (current, next) {
        (current, next) if current == next => Some(current),
        (current, Any) => Some(current),
        (Any, next) => Some(next),
        // "Weight, mast" and "weight of the mast" alike.
        (Weight, Body) | (Body, Weight) => Some(Body),
        (Weight, Force(force)) if weight(force) => Some(next),
        (Force(force), Weight) if weight(force) => Some(current),
        _ if parted => None,
        (Weight, Force(_)) if of => Some(Invented(Invention::Weightless)),
        (Force(_), Weight) => Some(Invented(Invention::Weightless)),
        (current, Pull) => Some(current),
        (current, Reaction) if support(current) => Some(current),
        (Invented(_), Reaction) => Some(current),
        (Pull | Reaction, next) => Some(next),
        // "The normal force of the hinge" is the hinge's; "friction of the rope" stays friction.
        (Invented(Invention::Contact), next) => Some(next),
        (Invented(_), _) if of => Some(current),
        (current, Invented(Invention::Contact) | Body) => Some(current),
        (Body, Force(_)) if of => Some(next),
        (current, Invented(_)) if of => Some(current),
        _ => None,
    }
}

fn own(problem: &Problem) -> Subject {
    match problem.force(ForceId::OwnWeight) {
        Some(_) => Subject::Force(ForceId::OwnWeight),
        None => Subject::Invented(Invention::OwnWeight),
    }
}

fn of_pull(problem: &Problem) -> Subject {
    let rope = |id: &ForceId| matches!(id, ForceId::Rope(_));
    let first = problem.forces().iter().map(|force| force.id).find(rope);
    first.map_or(Subject::Invented(Invention::Pull), Subject::Force)
}

/// The hinge, or what else holds the body.
fn of_reaction(problem: &Problem) -> Subject {
    let supports = || {
        let forces = problem.forces().into_iter().map(|force| force.id);
        forces.filter(|id| matches!(id, ForceId::Support(_)))
    };
    let hinge = supports().find(|id| super::may_stay_open(problem, *id));
    let first = hinge.or_else(|| supports().next());
    first.map_or(Subject::Invented(Invention::Contact), Subject::Force)
}

fn roller(problem: &Problem) -> Option<ForceId> {
    let mut forces = problem.forces().into_iter().map(|force| force.id);
    forces.find(|id| matches!(id, ForceId::Support(_)) && !super::may_stay_open(problem, *id))
}

/// What a group says, once it is clear which force it speaks of.
fn resolved(problem: &Problem, group: &Group) -> Said {
    let number = group
        .number
        .filter(|number| group.subject.is_some() && is_on(problem, *number));
    let place = group.place.or(number.map(Where::At));
    let named = match group.subject {
        None => Named::None,
        Some(Subject::Any) => match at_a_support(problem, place) {
            Some(force) => Named::Force(force),
            None => Named::SomeForce,
        },
        Some(Subject::Weight) => some_weight(problem, place),
        Some(subject) => {
            let settled = match subject {
                Subject::Pull => of_pull(problem),
                Subject::Reaction => roller(problem)
                    .filter(|force| matches!(place, Some(Where::At(at)) if acts_at(problem, *force, at)))
                    .map_or_else(|| of_reaction(problem), Subject::Force),
                Subject::Body => own(problem),
                subject => subject,
            };
            match settled {
                Subject::Force(force) => Named::Force(force),
                Subject::Invented(kind) => Named::Invented(kind),
                _ => Named::SomeForce,
            }
        }
    };
    Said {
        named,
        place,
        way: (group.way != Way::default()).then_some(group.way),
    }
}

/// "The force at the hinge" is the hinge's.
fn at_a_support(problem: &Problem, place: Option<Where>) -> Option<ForceId> {
    let Some(Where::At(metres)) = place else {
        return None;
    };
    let here = problem
        .forces()
        .into_iter()
        .map(|force| force.id)
        .filter(|id| acts_at(problem, *id, metres))
        .collect::<Vec<_>>();
    match here.as_slice() {
        [only @ ForceId::Support(_)] => Some(*only),
        _ => None,
    }
}

/// A weight of nothing in particular: the only one, or the only one that acts at the place said.
fn some_weight(problem: &Problem, place: Option<Where>) -> Named {
    let weights: Vec<ForceId> = problem
        .forces()
        .iter()
        .map(|force| force.id)
        .filter(|id| matches!(id, ForceId::OwnWeight | ForceId::Load(_)))
        .collect();
    let here: Vec<ForceId> = match place {
        Some(Where::At(metres)) => weights
            .iter()
            .copied()
            .filter(|id| acts_at(problem, *id, metres))
            .collect(),
        _ => Vec::new(),
    };
    match (weights.as_slice(), here.as_slice()) {
        ([only], _) | (_, [only]) => Named::Force(*only),
        ([], _) => Named::Invented(Invention::OwnWeight),
        _ => Named::SomeWeight,
    }
}
