//! Groups of inputs: what a keeper would call one thing.

/// A group of inputs.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Group {
    /// What lies in the soil, and how fast it comes out.
    Soil,
    /// Nitrifiers and other bacteria: how many come in, how fast they grow, what holds them back.
    Microbes,
    /// Gas exchange, air, carbon dioxide and oxygen.
    Gas,
    /// Plants and algae, and the light they live on.
    Plants,
    /// What is in tap water, its temperature, and what buffers it.
    Water,
    /// What the keeper does.
    Care,
}

impl Group {
    /// All groups, in order.
    pub const ALL: [Group; 6] = [
        Group::Soil,
        Group::Microbes,
        Group::Gas,
        Group::Plants,
        Group::Water,
        Group::Care,
    ];

    /// The word for it, in tables and study files.
    pub fn word(self) -> &'static str {
        match self {
            Group::Soil => "soil",
            Group::Microbes => "microbes",
            Group::Gas => "gas",
            Group::Plants => "plants",
            Group::Water => "water",
            Group::Care => "care",
        }
    }
}
