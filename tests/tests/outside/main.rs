//! Checks against what lies outside the planner: standards, tables, libraries,
//! other programs. One program, as linking one for each takes longer than
//! running them.

mod arms;
mod catalogue;
mod chance;
mod changed_sets;
mod colour;
mod compare;
mod composition;
mod dates;
mod exposures;
mod extremes;
mod geometry;
mod glare;
mod guides;
mod homography;
mod light;
mod light_rays;
mod linen;
mod link;
mod optics;
mod palette;
mod papers;
mod photo;
mod qr;
mod recombined;
mod regions;
mod rig;
mod search;
mod see_through;
mod set_sheet;
mod settings;
mod sizes;
mod space;
mod strewn;
mod tables;
mod through_lens;
mod traced;
mod trade_practice;
