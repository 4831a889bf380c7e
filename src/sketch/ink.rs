//! What a stroke or a cell shows.

/// What a stroke or a cell shows. The screen gives each a colour; without colour nothing is
/// lost, since every force, angle and distance also carries its label.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum Ink {
    /// Nothing.
    #[default]
    Blank,
    /// The body.
    Body,
    /// Ground, walls, ceilings, and the parts of a support.
    Ground,
    /// A rope or its pull.
    Rope,
    /// A weight, or the mass that has it.
    Weight,
    /// A given force.
    Load,
    /// The force of a support.
    Support,
    /// The point moments are taken about.
    Pivot,
    /// An angle.
    Angle,
    /// A component across the body.
    Component,
    /// A distance.
    Distance,
    /// A dashed line from which an angle is measured, or another help line.
    Faint,
    /// What a hint lights up.
    Lit,
    /// The mark of a legend entry.
    Label,
}
