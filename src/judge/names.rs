//! The names a learner may type, and what each stands for.

use super::board::Board;
use super::{Judgement, Remark};
use crate::key::{Atom, Axis, Formula, Key, Nature, Part, Step, StepId};
use crate::plane::Vector;
use crate::problem::{GivenId, Problem, Size};
use crate::reading::{Name, NameId, Node, Reading, Tree, Vocabulary};
use crate::text::{Symbol, Words};
use crate::units::Dimension;
use std::sync::LazyLock;

/// What a name stands for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum NameRole {
    /// A number that the problem tells.
    Given(GivenId),
    /// The acceleration of free fall.
    Gravity,
    /// The value of a step.
    Step(StepId),
    /// A name of the learner's own: its place in the list handed to [`Names::of`].
    Own(usize),
}

/// The vocabulary of a problem, with what each name stands for. Only the vocabulary, which knows
/// no values, is handed to the reader.
#[derive(Clone, Debug)]
pub struct Names {
    vocabulary: Vocabulary,
    roles: Vec<NameRole>,
    /// Spellings that the learner told in words.
    told: Vec<String>,
}

/// What all languages call a quantity. Names are asked for often.
fn listed(key: &str) -> &'static [String] {
    static LISTS: LazyLock<Vec<(&str, Vec<String>)>> = LazyLock::new(|| {
        let keys = [
            "judge.name.tension",
            "judge.name.mass",
            "judge.name.gravity",
        ];
        keys.map(|key| (key, Words::listed(key))).into()
    });
    let found = LISTS.iter().find(|(known, _)| *known == key);
    found.map_or(&[], |(_, list)| list)
}

impl Names {
    /// The names of a problem and its key, and the learner's own.
    ///
    /// Where a weight or its component is `asked`, a bare `m` or `mass` is its mass and a bare `W` its
    /// weight.
    pub fn asking(
        problem: &Problem,
        key: &Key,
        own: &[(Symbol, Dimension)],
        asked: Option<StepId>,
    ) -> Names {
        let mut names = Names::of(problem, key, own);
        let pulls = key.steps.iter().map(|step| step.id);
        let pulls: Vec<StepId> = pulls.filter(|id| matches!(id, StepId::Pull(_))).collect();
        if let [pull] = pulls.as_slice() {
            names.also_listed(NameRole::Step(*pull), "judge.name.tension");
        }
        names.sole_parts(key);
        if let Some(asked @ StepId::Found(Nature::Weight | Nature::Part, _)) = asked {
            names.short(problem, key, asked);
        }
        if key.general.is_some() {
            names.only_ones(problem, key);
        }
        let force = match asked {
            Some(StepId::Weight(force) | StepId::Across(force)) => problem.force(force),
            _ => None,
        };
        if let Some(force) = force
            && let Size::Weight(mass) = force.size
        {
            names.also(NameRole::Given(mass), "m");
            names.also_listed(NameRole::Given(mass), "judge.name.mass");
            names.also_listed(NameRole::Gravity, "judge.name.gravity");
            if matches!(asked, Some(StepId::Across(_))) {
                names.also(NameRole::Step(StepId::Weight(force.id)), "W");
            }
        }
        names
    }

    /// Where a support's force has one part only, which is called as the whole is, the name of that part
    /// is told too: `Hy` for an upright `H`.
    fn sole_parts(&mut self, key: &Key) {
        for step in &key.steps {
            let letter = match step.id {
                StepId::Reaction(_, Part::Along(Axis::Horizontal)) => 'x',
                StepId::Reaction(_, Part::Along(Axis::Vertical)) => 'y',
                _ => continue,
            };
            let symbol = step.symbol.typed();
            if !symbol.ends_with(letter) {
                self.also(NameRole::Step(step.id), &format!("{symbol}{letter}"));
            }
        }
    }

    /// Short spellings for what stands in the formula of a step: a bare `m` for its mass, a bare
    /// `W` for its weight.
    fn short(&mut self, problem: &Problem, key: &Key, asked: StepId) {
        let Some(formula) = key.formula(asked) else {
            return;
        };
        let inner = formula.inputs().into_iter().find(|id| id.is_weight());
        let weight = inner.and_then(|id| key.formula(id));
        for formula in [Some(&formula), weight.as_ref()].into_iter().flatten() {
            let mass = formula
                .children()
                .into_iter()
                .find_map(|part| match part.bare() {
                    Formula::Atom(Atom::Given(id)) => Some(*id),
                    _ => None,
                });
            let mass = mass.filter(|id| problem.given(*id).dimension == Dimension::MASS);
            if let Some(mass) = mass {
                self.also(NameRole::Given(mass), "m");
                self.also(NameRole::Given(mass), "mass");
                self.also(NameRole::Gravity, "gravity");
            }
        }
        if let Some(weight) = inner {
            self.also(NameRole::Step(weight), "W");
        }
    }

    /// Usual spellings of what a general problem has one of: a bare `m` for its only mass, a bare
    /// `W` for its only weight, `M` for its only unknown couple, `μ_s` for its only coefficient of
    /// friction.
    fn only_ones(&mut self, problem: &Problem, key: &Key) {
        let given = |dimension: Dimension| {
            let all = problem.givens().iter().enumerate();
            let of_kind = all.filter(move |(_, given)| given.dimension == dimension);
            of_kind.map(|(index, given)| (GivenId(index), &given.symbol))
        };
        // What is sought stands for its step.
        let role = |id: GivenId| match key.general.as_ref().and_then(|one| one.sought) {
            Some((sought, step)) if sought == id => NameRole::Step(step),
            _ => NameRole::Given(id),
        };
        let only = |ids: Vec<GivenId>| match ids.as_slice() {
            [id] => Some(role(*id)),
            _ => None,
        };
        if let Some(mass) = only(given(Dimension::MASS).map(|(id, _)| id).collect()) {
            self.also(mass, "m");
        }
        let is_coefficient = |(_, symbol): &(GivenId, &Symbol)| symbol.as_str().starts_with('μ');
        let numbers = given(Dimension::NUMBER).filter(is_coefficient);
        if let Some(coefficient) = only(numbers.map(|(id, _)| id).collect()) {
            for spelling in ["μ_s", "μs", "mu_s", "mus", "µs", "µ_s"] {
                self.also(coefficient, spelling);
            }
        }
        self.straight(key);
        let mut directions = key.steps.iter().filter(|step| step.id.is_direction());
        if let (Some(direction), None) = (directions.next(), directions.next()) {
            self.also(NameRole::Step(direction.id), "ψ");
            self.also(NameRole::Step(direction.id), "psi");
        }
        let is_couple = |step: &&Step| {
            step.asked && step.id.is_unknown() && step.dimension == Dimension::MOMENT
        };
        let mut couples = key.steps.iter().filter(is_couple);
        if let (Some(couple), None) = (couples.next(), couples.next()) {
            self.also(NameRole::Step(couple.id), "M");
        }
        let exact = |name: &Name| name.symbol.as_str() == "A";
        let is_total = |step: &&Step| step.symbol.as_str() == "ΣA";
        let mut totals = key.steps.iter().filter(is_total);
        if let (Some(total), None) = (totals.next(), totals.next())
            && !self.vocabulary.names.iter().any(exact)
        {
            self.also(NameRole::Step(total.id), "A");
        }
        let mut weights = key.steps.iter().filter(|step| step.id.is_weight());
        if let (Some(weight), None) = (weights.next(), weights.next()) {
            self.also(NameRole::Step(weight.id), "W");
        }
    }

    /// The level part of a level force is the force itself, and so is the upright part of an upright
    /// one: `Tx`, `N_y`.
    fn straight(&mut self, key: &Key) {
        let Some(general) = &key.general else {
            return;
        };
        for step in key.steps.iter().filter(|step| step.id.is_unknown()) {
            let way = general.ways.get(&step.id).copied();
            let ends = general.ends.get(&step.id).into_iter().flatten();
            let ways: Vec<_> = way.into_iter().chain(ends.map(|(_, way)| *way)).collect();
            let along = |axis: Vector| {
                let all = |way: &Vector| way.dot(axis).abs() > 1.0 - 1e-9;
                !ways.is_empty() && ways.iter().all(all)
            };
            let axes = [(Vector::new(1.0, 0.0), "x"), (Vector::new(0.0, 1.0), "y")];
            for (_, letter) in axes.into_iter().filter(|(axis, _)| along(*axis)) {
                let name = step.symbol.as_str();
                self.also(NameRole::Step(step.id), &format!("{name}{letter}"));
                self.also(NameRole::Step(step.id), &format!("{name}_{letter}"));
            }
        }
    }

    /// Another spelling for a step, as the learner told it in words.
    pub fn call(&mut self, step: StepId, spelling: &str) {
        self.also(NameRole::Step(step), spelling);
        self.told.push(spelling.to_owned());
    }

    /// True for a usual spelling of what the problem has one of.
    pub(super) fn is_usual(&self, id: NameId, spelling: &str) -> bool {
        let name = self.vocabulary.name(id);
        name.is_some_and(|name| name.spellings.iter().any(|usual| usual == spelling))
    }

    /// True for a spelling that the learner told in words.
    pub(super) fn is_told(&self, spelling: &str) -> bool {
        self.told.iter().any(|told| told == spelling)
    }

    /// Another spelling for what has this role, unless a name is spelled so.
    /// The same with what every language calls it.
    fn also_listed(&mut self, role: NameRole, key: &str) {
        for spelling in listed(key) {
            self.also(role, spelling);
        }
    }

    fn also(&mut self, role: NameRole, spelling: &str) {
        let taken = self
            .vocabulary
            .names
            .iter()
            .any(|name| name.symbol.shown() == spelling);
        let at = self.roles.iter().position(|known| *known == role);
        if let Some(name) = at
            .filter(|_| !taken)
            .and_then(|at| self.vocabulary.names.get_mut(at))
        {
            name.spellings.push(spelling.to_owned());
        }
    }

    /// The names of a problem and its key, and the learner's own.
    pub fn of(problem: &Problem, key: &Key, own: &[(Symbol, Dimension)]) -> Names {
        let mut names = Names {
            vocabulary: Vocabulary { names: Vec::new() },
            roles: Vec::new(),
            told: Vec::new(),
        };
        // What the learner has named goes before what the key would call so.
        for (index, (symbol, dimension)) in own.iter().enumerate() {
            names.add(symbol, *dimension, NameRole::Own(index));
        }
        // What is sought stands for its step.
        let printed = problem.givens().iter().enumerate();
        for (index, given) in printed.filter(|(index, _)| !key.is_sought(GivenId(*index))) {
            names.add(
                &given.symbol,
                given.dimension,
                NameRole::Given(GivenId(index)),
            );
        }
        names.add(
            &Symbol::new("g"),
            Dimension::ACCELERATION,
            NameRole::Gravity,
        );
        for step in &key.steps {
            let unnamed = step.id.is_balance()
                || matches!(
                    step.id,
                    StepId::Forces | StepId::Pivot | StepId::KnownMoments | StepId::ForceSum(_)
                );
            if !unnamed {
                names.add(&step.symbol, step.dimension, NameRole::Step(step.id));
            }
        }
        names
    }

    /// These names and one more of the learner's own, which goes before what is called so already.
    pub(super) fn with_own(&self, symbol: &Symbol, dimension: Dimension, index: usize) -> Names {
        let mut names = self.clone();
        let known = &mut names.vocabulary.names;
        if let Some(at) = known.iter().position(|name| name.symbol == *symbol) {
            known.remove(at);
            names.roles.remove(at);
        }
        names.add(symbol, dimension, NameRole::Own(index));
        names.vocabulary.names.rotate_right(1);
        names.roles.rotate_right(1);
        names
    }

    /// Adds a name unless it is taken; a component may also be written with a plain p.
    fn add(&mut self, symbol: &Symbol, dimension: Dimension, role: NameRole) {
        if self
            .vocabulary
            .names
            .iter()
            .any(|name| name.symbol == *symbol)
        {
            return;
        }
        let mut spellings = Vec::new();
        if let Some(stem) = symbol.as_str().strip_suffix('⊥') {
            spellings.push(format!("{stem}p"));
            spellings.push(format!("{stem}_p"));
            spellings.push(format!("{stem} across"));
        }
        self.vocabulary.names.push(Name {
            symbol: symbol.clone(),
            dimension,
            spellings,
        });
        self.roles.push(role);
    }

    /// What the reader is handed.
    pub fn vocabulary(&self) -> &Vocabulary {
        &self.vocabulary
    }

    /// What a name stands for.
    pub fn role(&self, id: NameId) -> Option<NameRole> {
        self.roles.get(id.0).copied()
    }

    /// The dimension of a name.
    pub(super) fn dimension(&self, id: NameId) -> Dimension {
        self.vocabulary
            .name(id)
            .map_or(Dimension::NUMBER, |name| name.dimension)
    }
}

/// The remark on a reading that is not the first one.
pub(super) fn other_reading(board: &Board<'_>, first: &Reading, taken: &Reading) -> Remark {
    let is_force = |id: NameId| {
        let name = board.names.vocabulary().name(id);
        name.is_some_and(|name| name.symbol.as_str() == "N")
    };
    let has = |reading: &Reading| {
        let mut names = reading.sides.iter().flat_map(Tree::names);
        names.any(|(id, _)| is_force(id))
    };
    match has(taken) && !has(first) {
        true => Remark::NotNewtons,
        false => Remark::OtherReading,
    }
}

/// True of a noted reading that is not the first, where it says something the first does not.
pub(super) fn says_in_another_reading(
    (likeliest, reading): (&Reading, &Reading),
    noted: &Judgement,
    first: Option<&Judgement>,
) -> bool {
    // `c = √(1.5² + 2²) m = 2.5 m`, with metres in the place of a mass.
    let broke = first.is_some_and(|one| one.evidence.broken_link);
    // `1.024 N = 117.6` of a force N: its number comes out, and is not to be traced.
    let names = |reading: &Reading| reading.sides.iter().flat_map(Tree::names).count();
    let comes_out = noted.remarks.contains(&Remark::NotSeen) && names(reading) > names(likeliest);
    noted.proved || noted.names.is_some() && broke || comes_out
}

/// True if the name of a step stands in a tree.
pub(super) fn names_step(board: &Board<'_>, step: StepId, tree: &Tree) -> bool {
    let names = tree.names();
    names
        .iter()
        .any(|(id, _)| board.names.role(*id) == Some(NameRole::Step(step)))
}

/// A chain that starts (or, with two sides, ends) with a name alone: what it is about, and the
/// other sides.
pub(super) fn lone_name<'t>(
    board: &Board<'_>,
    sides: &[&'t Tree],
) -> Option<(NameRole, Vec<&'t Tree>)> {
    let role = |tree: &Tree| match tree.node {
        Node::Name(id) => board.names.role(id),
        _ => None,
    };
    if sides.len() < 2 {
        return None;
    }
    if let Some(role) = role(sides[0]) {
        return Some((role, sides[1..].to_vec()));
    }
    let last = sides[sides.len() - 1];
    role(last)
        .filter(|role| matches!(role, NameRole::Step(_)))
        .map(|role| (role, sides[..sides.len() - 1].to_vec()))
}

/// The step that a side is the name of.
pub(super) fn step_of(board: &Board<'_>, side: &Tree) -> Option<StepId> {
    match side.node {
        Node::Name(id) => match board.names.role(id)? {
            NameRole::Step(step) => Some(step),
            _ => None,
        },
        _ => None,
    }
}

/// The step whose name stands alone on a side.
pub(super) fn step_alone(board: &Board<'_>, sides: &[Tree]) -> Option<StepId> {
    let sides: Vec<&Tree> = sides.iter().collect();
    match lone_name(board, &sides)? {
        (NameRole::Step(step), _) => Some(step),
        _ => None,
    }
}
