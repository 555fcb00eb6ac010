"""The sheet Takeoff: how much concrete and steel."""

from __future__ import annotations

from calc.declare import *
from calc.trade.inputs.areas import Area
from calc.trade.levels import AREA, EDGE
from calc.trade.takeoff.concrete import Concrete
from calc.trade.takeoff.dowels import CuttingList, DoweledEdge, DowelNeeds
from calc.trade.takeoff.geometry import EdgeTakeoff, MeanThickness, Slab
from calc.trade.takeoff.joints import JointDepth, JointNeeds, MatchedJoints, Panel
from calc.trade.takeoff.reinforcement import Reinforcement
from calc.trade.takeoff.uncertainty import VolumeUncertainty

TAKEOFF = story.StorySheet(
    "Takeoff",
    "Takeoff",
    "how much concrete and steel",
    "Area workings",
    (
        story.Table(
            "Concrete, by area",
            AREA,
            "Area",
            (
                story.Step(Area.shape, "Shape"),
                story.Step(Slab.length, "Length"),
                story.Step(Slab.width, "Width"),
                story.Step(Slab.far_width, "Other width"),
                story.Step(Slab.gross_area, "Gross area"),
                story.Step(Slab.deducted, "Holes"),
                story.Step(Area.quantity, "Copies"),
                story.Step(Slab.net_area, "Net area"),
                story.Step(Area.thickness, "Thick"),
                story.Step(MeanThickness.other_end, "Other end"),
                story.Step(MeanThickness.mean, "Mean thick"),
                story.Step(Concrete.in_place, "Concrete in place"),
            ),
            total="All areas",
            note="copies multiply everything that belongs to an area",
        ),
        story.Table(
            "Control joints, by area",
            AREA,
            "Area",
            (
                story.Step(Panel.run, "Run"),
                story.Step(Panel.width, "Width"),
                story.Step(Panel.joints_along, "Joints along"),
                story.Step(Panel.panel_width, "Panel width"),
                story.Step(Panel.spacing, "Spacing, at most"),
                story.Step(Panel.panels, "Panels"),
                story.Step(Panel.panel_length, "Panel length"),
                story.Step(MatchedJoints.joints, "Joints across"),
                story.Step(MatchedJoints.length, "Joint length"),
                story.Step(JointDepth.made, "Joint depth"),
            ),
            total="All areas",
            note="joints along first, since they decide the width of a panel; old joints are matched",
        ),
        story.Table(
            "Edges and dowels",
            EDGE,
            "Edge",
            (
                story.Step(EdgeTakeoff.length, "Length"),
                story.Step(EdgeTakeoff.formed, "Formed"),
                story.Step(EdgeTakeoff.isolated, "Isolation joint"),
                story.Step(DoweledEdge.first_to_last, "First to last"),
                story.Step(DoweledEdge.per_piece, "Dowels, a piece"),
                story.Step(DoweledEdge.dowels, "Dowels"),
                story.Step(DoweledEdge.spacing_as_laid_out, "Spacing, laid out"),
                story.Step(DoweledEdge.dowel_length, "Dowel length"),
                story.Step(DoweledEdge.cover, "Cover"),
                story.Step(CuttingList.bars, "Stock bars"),
            ),
            total="All edges",
            note="the spacing typed is the most: the count is rounded up and the rest spread evenly",
        ),
        story.Lines(
            "Dowels and joints to buy for", (DowelNeeds.dowels, JointNeeds.isolation_length, JointNeeds.saw_cut)
        ),
        story.Table(
            "Reinforcement, by area",
            AREA,
            "Area",
            (
                story.Step(Reinforcement.supports, "Supports"),
                story.Step(Reinforcement.ties, "Ties"),
                story.Step(Reinforcement.sheets, "Mesh sheets"),
                story.Step(Reinforcement.vapor_area, "Vapor retarder"),
            ),
            total="All areas",
        ),
        story.Lines(
            "How far off the volume may be",
            (
                VolumeUncertainty.from_depth,
                VolumeUncertainty.from_string_line,
                VolumeUncertainty.from_area,
                VolumeUncertainty.from_yield,
                VolumeUncertainty.std_dev,
            ),
            note="one standard deviation each; they add as squares",
            strong=(VolumeUncertainty.std_dev,),
        ),
        story.Plans("Plans", "not to scale; which side of an area is doweled was not surveyed"),
    ),
)
