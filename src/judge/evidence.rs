//! What speaks about a line that does not hold.

use super::board::Board;
use super::misread::{self, MisreadNumber};
use super::stock::Stock;
use super::{
    AngleSum, Aside, Judgement, Lacking, Own, Terms, Typed, TypedRatio, WrittenTerm, WrongAngle,
    angles, surplus, terms,
};
use crate::key::{Samples, StepId};
use crate::problem::GivenId;
use crate::reading::{Reading, Way};
use crate::units::Dimension;

/// What a line would give for a part of the hinge's force, were the unknown found.
#[derive(Clone, Debug, PartialEq)]
pub struct ByPart {
    /// The part.
    pub part: StepId,
    /// What the form may stand for, as functions of the givens.
    pub lifted: Vec<Samples>,
    /// The line multiplied out.
    pub terms: Terms,
}

/// What speaks about a line that does not hold; only `diagnosis` names.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Evidence {
    /// What the typed form may stand for, as functions of the givens (for an equation, of the
    /// unknown that it would give), fewest unexplained numbers first.
    pub lifted: Vec<Samples>,
    /// The number typed or calculated, in SI units.
    pub number: Option<Typed>,
    /// The ways that were said behind it.
    pub ways: Vec<Way>,
    /// The number that ends a chain whose links hold.
    pub ended: Option<Typed>,
    /// The step whose value this is, where it is another than the one asked.
    pub other_step: Option<StepId>,
    /// True if the form is right but for numbers of one or two figures in it.
    pub rounded_hard: bool,
    /// The step that a true relation tells, by its name, a ratio of its angle or its square.
    pub tells: Option<StepId>,
    /// The other steps that are named in the line.
    pub rests_on: Vec<StepId>,
    /// Those of them that stand in it in her sense, which is not the key's.
    pub turned: Vec<StepId>,
    /// Struts, and parts of their forces, that she counts the other way round, and that stand in a
    /// line which holds only as the key counts them.
    pub unturned: Vec<StepId>,
    /// The dimension that was typed, where it is not the one asked.
    pub dimension: Option<Dimension>,
    /// True if the form holds, but the number after the last `=` is not its value.
    pub broken_link: bool,
    /// True if that is a form, or of what stands before it was not seen that it is right.
    pub broken_by_form: bool,
    /// The unit in which the number would be right.
    pub right_in: Option<&'static str>,
    /// True if a side of a chain goes on from the value of the side before it.
    pub runs_on: bool,
    /// True if the line contains a sine, and a cosine.
    pub ratios: (bool, bool),
    /// True if the line is a number alone, perhaps behind a name.
    pub alone: bool,
    /// True if only names of the problem and its steps stand in the line: its value is no number
    /// of the learner's.
    pub names_only: bool,
    /// True if a plus stands before the value.
    pub plus_told: bool,
    /// True if those names are whole forces and distances, and no function of an angle stands beside
    /// them: nothing in it is a ratio or a component.
    pub unresolved: bool,
    /// True if the unknown stands in it, by its name or by the value that was told of it.
    pub of_unknown: bool,
    /// True if the line contains a tangent.
    pub tangent: bool,
    /// True if something in it is divided by a sine or cosine.
    pub over_ratio: bool,
    /// True if it names a level or upright part of a pull.
    pub names_parts: bool,
    /// True if the line contains a function of an angle, or one that gives an angle.
    pub angled: bool,
    /// The line multiplied out: what it sets against each other.
    pub terms: Terms,
    /// True for an equation that an unknown is to be found from.
    pub equation: bool,
    /// True if an angle was typed in radians.
    pub radians: bool,
    /// An angle, and one of her own with the same number: with hers in its place the form would
    /// be the right way.
    pub two_meanings: Option<(StepId, StepId)>,
    /// What a balance of forces says of the part of the hinge's force in it, the pull being found.
    pub by_part: Option<ByPart>,
    /// An earlier value of hers, since replaced by another, from which the line would follow.
    pub superseded: Option<(StepId, Own)>,
    /// A given that was told with another number.
    pub misread: Option<GivenId>,
    /// A number that the problem does not print, in whose place a given would make the line right.
    pub misread_number: Option<MisreadNumber>,
    /// True if the size holds and the way that was said with it does not.
    pub wrong_way: bool,
    /// Of such a line the value as it would stand with its right way.
    pub turned_about: Option<Own>,
    /// The line of a wrong value of hers that is told once more with its way turned round.
    pub turned_again: Option<usize>,
    /// True if the value holds, and the body that was said with it is another.
    pub wrong_body: bool,
    /// True if an angle would hold with the other line than the one that was said with it.
    pub other_line: bool,
    /// True for a line that is right but for one part too many; the caret shows it.
    pub surplus: bool,
    /// True for a balance about the hinge that is right but for a term with the hinge's own force.
    pub reaction_arm: bool,
    /// True for an equation whose sides differ and which holds no unknown to solve for.
    pub false_equation: bool,
    /// Of such an equation of two sides the terms that it sets against each other.
    pub against: Terms,
    /// True for a moment balance that would hold with the unknown's term on the other side.
    pub same_turn: bool,
    /// True where, of such a balance, the terms as typed do not all turn or point one way.
    pub both_ways: bool,
    /// Its sides are forces, whatever is asked.
    pub of_forces: bool,
    /// True if it is the value with g = 10 m/s².
    pub takes_ten: bool,
    /// True where it may as well be the right value in too few figures.
    pub ten_or_few: bool,
    /// True for a number alone that is the value of a later step with g = 10 m/s².
    pub perhaps_ten: bool,
    /// True if it is a pull's size with a minus sign.
    pub negative_pull: bool,
    /// True if g was told with a value that is not accepted.
    pub gravity_told: bool,
    /// True where a statement before it in the same line holds; the caret shows which does not.
    pub after_right: bool,
    /// What a balance of moments lacks, where nothing else is wrong with it.
    pub lacking: Option<Lacking>,
    /// What stands in a sum of angles that is not the angle asked.
    pub angle_sum: Option<AngleSum>,
    /// The sines, cosines and tangents of the line, with their angles.
    pub typed_ratios: Vec<TypedRatio>,
    /// The form of the line, term by term as it was typed; empty where there is none.
    pub written: Vec<WrittenTerm>,
    /// True if a number of the line may be a ratio that was worked out before.
    pub worked_ratio: bool,
    /// The numbers of a line about an angle of the working, as they were typed.
    pub typed_degrees: Vec<f64>,
    /// An angle in whose place another one would make the line right.
    pub wrong_angle: Option<WrongAngle>,
    /// What the line says beside the question, unless its form shows another thought.
    pub aside: Option<Aside>,
    /// The lines of her own from which a relation follows that is noted, or a value that has too few
    /// figures.
    pub follows: Vec<usize>,
    /// The unknown that a balance gives that follows from wrong values of hers.
    pub own_root: Option<f64>,
    /// The refused line of hers that it says once more, written otherwise.
    pub says_again: Option<usize>,
    /// True for the size of a force set equal to a root with a minus before it.
    pub negative_size: bool,
    /// True for an unknown said to follow from a balance of hers that gives another.
    pub not_concluded: bool,
}

impl Evidence {
    /// True for a line in which a number of the problem is another; of a form only where it shows no
    /// mistake (`by_form`).
    pub fn is_misread(&self, by_form: bool) -> bool {
        self.misread.is_some() || self.misread_number.is_some() && !by_form
    }
}

/// Sees what the form of a line shows by itself.
pub(super) fn see(board: &Board<'_>, stock: &Stock, reading: &Reading, judgement: &mut Judgement) {
    terms::see(board, reading, judgement);
    angles::see(board, stock, reading, judgement);
    misread::see(board, stock, reading, judgement);
    surplus::see(board, stock, reading, judgement);
}

impl Evidence {
    /// True if the line shows angles: in its ratios, or added up.
    pub fn angled_or_sum(&self) -> bool {
        self.angled || self.angle_sum.is_some()
    }
}
