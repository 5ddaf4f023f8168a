"""Sentences as theatre teams write them, which no rule may report: the guard on false alarms."""

from __future__ import annotations

import pytest
from chamberwise.engine.checks.wording import RULES
from chamberwise.engine.checks.wording.rule import TextKind

INSTRUCTIONS = """
Hold the tip and the second instrument still.
Check pupil and wound.
Ask for the box and the vitrectomy pack.
Call for the kit and help.
Tell the circulating and scrub practitioners.
Keep irrigation running until the viscoelastic is in.
Let the pedal up.
Fill the chamber through the side port.
Withdraw the tip once the chamber is full.
Inject dispersive viscoelastic between the tear and the pieces.
Lower the bottle to 40 cm.
Set the infusion pressure to 25 mmHg.
Set the cut rate to the highest and the vacuum to the lowest that work.
Suture the main wound with 10-0 nylon.
Close the sclerotomy with 8-0 absorbable suture.
Make a port 3.5 mm behind the limbus with a 23 gauge blade.
Bend the 25G needle at its tip.
Draw up 0.1 mL of triamcinolone 40 mg per mL.
Inject cefuroxime 1 mg in 0.1 mL (10 mg per mL).
Give acetazolamide 500 mg into a vein.
Dilute the triamcinolone 1:10 with balanced salt solution.
Add hyaluronidase 15 units to each mL of the block.
Read the label aloud: trypan blue.
Keep the tip in the eye; do not withdraw it.
Keep irrigation on and do not aspirate.
Do not rotate the nucleus; lift it on viscoelastic.
Do not withdraw the tip. Keep it still.
Leave the piece where it is, and never follow it into the vitreous.
Hold the piece in front of the iris, but never press on the eye.
If the wound leaks, suture it.
If the pupil is small and stays small, stretch it with hooks.
When the chamber is full, withdraw the tip.
WHEN the chamber is full, THEN withdraw the tip.
Before the tip leaves the eye, fill the chamber.
After each pass of the cutter, look for a strand at the wound.
With the second hand, inject viscoelastic through the side port.
As soon as the chamber is full, stop the infusion.
Ask the patient to breathe out slowly and keep still.
Tell the patient what happened.
Tell the patient to keep the shield on and call the ward if the eye aches.
Warn the patient that the eye may ache for a day.
Explain that a second operation could follow.
Say aloud: "Capsule is open. Stop. Box please."
Say “Stop and hold” to the assistant.
Check that the wounds seal and stay dry.
Check that the infusion is running and set low.
Check whether a strand moves when the infusion changes.
Check lens model, power and position.
Check the needle and suture before use.
Check the conjunctiva, lid speculum and drape for pressure on the eye.
Record the time, the lens and its position.
Record who was called and when.
Report the event on the day it happened.
Phone the vitreoretinal service the same day.
Arrange surgery within 7 days.
Order the blood pressure to be read aloud every 5 min.
Read the blood pressure aloud from the monitor every 5 min.
Monitor the blood pressure every 5 min.
Verify the lens power by reading it aloud from the box.
Consider a suture if the wound leaks when pressed.
Inject the lens slowly, over 10 s, into the sulcus.
Aspirate cortex gently until the edge of the tear is in view.
Place the haptics in the sulcus at 3 and 9 o'clock.
Use the lens with the 13 mm length.
Use the box checked on 7 Mar 2026.
Use the viscoelastic that was opened first.
Take 0.5 D off the power of the lens.
Implant the +21.0 D three-piece lens in the sulcus.
Enlarge the wound to 6.0 mm.
Inject 1.25 mg bevacizumab in 0.05 mL (25 mg per mL).
Inject 0.4 to 0.8 mg in 0.1 to 0.2 mL (4 mg per mL).
Draw 0.1 mL from the 40 mg vial (40 mg per mL).
Inject up to 4 mg; use 0.1 mL of the 10 mg per mL solution.
Inject 0.5 mL of lidocaine 1 % (10 mg per mL).
Put povidone-iodine 5 % on the surface for 3 min.
Put one drop of phenylephrine 2.5 % eye drops into the right eye.
Irrigate with normal saline.
Send the letter to the family doctor, cc the optometrist.
Ring extension 12345 for the coordinator.
Write lot 1234567 on the sheet.
Re-form the chamber through the side port.
Recheck the pupil in May 2026.
Double-check the power on the box.
Slowly withdraw the cannula over 5 s.
Cut the strand flush with the iris.
Free the wound first, with the port in view.
Note the stage at which it happened.
Hand the surgeon the second dispersive syringe.
Count the swabs and the needles.
Stop.
Start the clock.
Open the PCR box.
Write down who operates and why.
Lift speculum and drape off the eye.
Read model, power, eye, expiry aloud.
Work out the three-piece power for sulcus and capture.
Recalculate the lens power for the sulcus.
Repair the iris with 10-0 suture.
Set the vacuum low and cut rate high.
""".strip().splitlines()

SPOKEN = """
Vitreous is forward. We change to the vitrectomy pathway.
Capsule is open. Box please.
Second viscoelastic is ready.
Bottle at 40 cm.
Blood pressure is 150 over 80.
You may feel some pressure. Please keep still.
Lens: three-piece, +20.5 D, sulcus, right eye.
Cutting on, infusion on.
Stain is 4 mg per mL, label read.
HOLD STILL AS THE CHAMBER FILLS.
This is a rupture of the posterior capsule.
This is the right eye.
""".strip().splitlines()

QUESTIONS = """
Is the main wound dry?
At which stage did it happen?
What is left in front of the tear?
Where is vitreous seen: at the tear, in the chamber, or at a wound?
Is a three-piece lens in the building, yes or no?
Is the tear round, and are its edges in view all round?
Has the pupil changed since the last pass?
Is the pressure below 30 mmHg?
How much of the rim is left: more or less than half?
Is the anaesthetist in theatre?
Is the operator trained for a lens without capsule?
""".strip().splitlines()

SIGNS = """
A dry sponge stays dry at the wound
No strand at the wound, no change when the infusion changes
No vitreous in the chamber and none at the wound
Pupil round, no stain left
Edge of the tear in view all round
The piece moves with each change of infusion
Fluid appears at the wound
Iris lies flat
The chamber deepens at once
Vision 6/12 on the chart
""".strip().splitlines()

CAUTIONS = """
The chamber collapses if the tip leaves early.
Vitreous that is pulled on tears the retina.
A single-piece lens in the sulcus rubs the iris.
A sponge pulls vitreous through the wound.
The capsule may tear further while the lens unfolds.
Methylene blue blinds the eye; trypan blue is the stain.
Residual stain raises the pressure.
Never chase a piece that has sunk out of view.
Acetylcholine can slow the heart within 1 min.
Do not run the cutter through the main wound.
""".strip().splitlines()

INSTEADS = """
Keep the tip still until the chamber is full.
Leave the piece for the vitreoretinal surgeon.
Cut the strand inside the eye, with the port in view.
Put a three-piece lens in the sulcus.
Read the label aloud before the dye is drawn up.
""".strip().splitlines()

REASONS = """
A leaking wound lowers the pressure and lets infection in.
Dispersive viscoelastic stays where it is put and leaves slowly.
It takes about 10 s to fill the chamber.
It is known that late removal of nucleus raises the pressure.
This pathway is for rehearsal.
These pieces sink behind the tear.
This lens was made for the bag.
In 1,042 ruptures, 621 happened during emulsification.
Of 10,000 operations about 200 rupture.
About 1 in 1,000 operations ends with a dropped piece.
The retina tore in 7 of 144 eyes (4.9 %).
Patients read about 5 mm text at 40 cm.
The rule of nines takes 1.0 D off between 18 and 27 D.
The A4 sheet is read at 1.5 m.
Review is due on 2027-11-25, by edition 1.2.10.
See step S-1 and source S24.
Carbachol 0.01 % is 0.1 mg per mL; 0.5 mL holds 0.05 mg.
Surgeons should not be blamed; denial could be a sign of stress.
A 20 G cutter, a 23G cutter and a 19 G needle fit the port.
Stock may differ, and 4,000 cuts a minute is common.
The glaucoma clinic sees eyes with normal-tension glaucoma.
""".strip().splitlines()

CLEAN = [
    (kind, text)
    for kind, texts in (
        (TextKind.INSTRUCTION, INSTRUCTIONS),
        (TextKind.SPOKEN, SPOKEN),
        (TextKind.QUESTION, QUESTIONS),
        (TextKind.SIGN, SIGNS),
        (TextKind.CAUTION, CAUTIONS),
        (TextKind.INSTEAD, INSTEADS),
        (TextKind.REASON, REASONS),
        (TextKind.ANSWER, ["Cannot tell", "Torn, at the edge only", "More than a quarter"]),
        (TextKind.TITLE, ["Posterior capsule rupture", "Lens in the sulcus, eye closed"]),
    )
    for text in texts
]


@pytest.mark.parametrize(("kind", "text"), CLEAN)
def test_no_rule_reports_a_sound_sentence(kind: TextKind, text: str) -> None:
    reported = {
        rule.slug: [text[hit.start : hit.end] for hit in rule.find(text)]
        for rule in RULES
        if kind in rule.reads and any(rule.find(text))
    }
    assert reported == {}


def test_the_table_is_long_enough_to_guard() -> None:
    assert len({text for _, text in CLEAN}) >= 120
