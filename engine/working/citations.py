"""The sources of the calculations, each with its mark; several calculations share one."""

from __future__ import annotations

from chamberwise.engine.model.words import Mark, Source

OPTICS = Source("thin-lens-optics", "Thin-lens optics, any textbook of optics", Mark.MEMORY)
HABIT = Source("common-practice", "Common practice", Mark.COMMON_PRACTICE)
OWN = Source("own-inference", "Our own inference from the sources beside it", Mark.DERIVED)

SRK_T = Source(
    "retzlaff-1990",
    "Retzlaff, Sanders, Kraff. J Cataract Refract Surg 1990;16:333-340",
    Mark.READ,
    "abstract; equations in three independent open implementations",
    "The erratum (1990;16:528) is from memory: 1.716 is taken as the original digit, and is the "
    "one that is continuous at 24.2 mm; 1.715 moves the power by at most 0.06 D.",
)
HOLLADAY_1 = Source(
    "holladay-1988",
    "Holladay and others. J Cataract Refract Surg 1988;14:17-24",
    Mark.MEMORY,
    note="Equations read in two open implementations; the two limits in one of them.",
)
HOFFER_Q = Source(
    "hoffer-1993",
    "Hoffer. J Cataract Refract Surg 1993;19:700-712; errata 1994;20:677; letter 2007;33:2-3",
    Mark.MEMORY,
    note="Equations read in an open implementation; which symbol the errata put right is not "
    "known to us.",
)
CONSTANTS = Source(
    "constant-conversions",
    "Conversions between lens constants, as in an open implementation",
    Mark.READ,
    note="Approximate: constants optimised for the unit are better.",
)
BAG_SULCUS_CHART = Source(
    "bag-sulcus-chart",
    "Hill, bag against sulcus lens power, chart",
    Mark.READ,
    "doctor-hill.com/iol-power-calculations/bag-vs-sulcus",
    "Rows +15 to +30 D read; the bands below are from memory of an older print.",
)
RULE_OF_NINES = Source(
    "rule-of-nines",
    "Rule of nines, on a surgeon's page",
    Mark.READ,
    "agimenez.info/en/sulcus-lens-power-calculation",
    "9, 18 and 27 D stand in two bands in every copy seen.",
)
DUBEY = Source(
    "dubey-2012",
    "Dubey, Birchall, Grigg. Ophthalmology 2012;119:261-265",
    Mark.READ,
    "pubmed.ncbi.nlm.nih.gov/22196976",
    "Abstract; 36 sulcus lenses.",
)
SULCUS_SERIES = Source(
    "sulcus-series-2012",
    "Br J Ophthalmol 2012;96:1316, 91 sulcus lenses",
    Mark.READ,
    "bjo.bmj.com/content/96/10/1316.full",
)
SULCUS_ABSTRACT = Source(
    "sulcus-abstract",
    "Meeting abstract, 30 sulcus lenses",
    Mark.READ,
    "iovs.arvojournals.org/article.aspx?articleid=2405847",
)
ONE_PIECE = Source(
    "chang-2009",
    "Chang and others. J Cataract Refract Surg 2009;35:1445-1458",
    Mark.READ,
    note="Abstract; 30 eyes referred, 28 needed surgery.",
)
CAPTURE = Source(
    "millar-2013", "Millar, Allen, Steel. J Cataract Refract Surg 2013;39:841-844", Mark.MEMORY
)
CONSTANT_SHORTCUT = Source(
    "constant-difference",
    "Rule of nines review, 25 April 2020: difference of A-constants",
    Mark.READ,
    "cataractcoach.com/2020/04/25/review-rule-of-9s-for-sulcus-iol-power",
)
CHAMBER_LABELS = Source("anterior-chamber-labels", "Labels of anterior-chamber lenses", Mark.MEMORY)
IRIS_CLAW = Source(
    "huerva-2017",
    "Huerva. BMC Ophthalmol 2017;17:122",
    Mark.READ,
    "doi 10.1186/s12886-017-0516-1",
)
WHITE_TO_WHITE = Source(
    "heslin-1979",
    "Heslin, 1979: is white-to-white right?",
    Mark.READ,
    note="Doubts the rule by measuring cadaver eyes.",
)
NARENDRAN = Source(
    "narendran-2009",
    "Narendran and others. Eye 2009;23:31-37, 55,567 operations",
    Mark.MEMORY,
    "doi 10.1038/sj.eye.6703049",
    "The same odds ratios and the baseline 0.736 % were read in the open source of a clinical "
    "record system. The row for staff grades differs between copies: 0.36 or 0.87.",
)
NATIONAL_2024 = Source(
    "sim-2024",
    "Sim and others. Eye 2024, 961,208 operations, 1.01 %",
    Mark.READ,
    "doi 10.1038/s41433-024-03344-2",
    "Abstract.",
)
NATIONAL_2015 = Source(
    "day-2015",
    "Day and others. Eye 2015;29:552-560, 180,114 eyes, 1.95 %",
    Mark.READ,
    "pmc.ncbi.nlm.nih.gov/articles/PMC4816350",
)
COMPOSITE_LETTER = Source(
    "composite-letter-2011",
    "Letter, Eye 2011: 100 patients, 5 % predicted, 1 % seen",
    Mark.READ,
    "nature.com/articles/eye201115",
)
MUHTASEB = Source(
    "muhtaseb-2004",
    "Muhtaseb, Kalhoro, Ionides. Br J Ophthalmol 2004;88:1242-1246",
    Mark.READ,
    "doi 10.1136/bjo.2004.046003",
    "Tables 1 and 2.",
)
HABIB = Source(
    "habib-2006",
    "Habib and others. BMC Ophthalmol 2006;6:38, table 1",
    Mark.READ,
    "bmcophthalmol.biomedcentral.com/articles/10.1186/1471-2415-6-38/tables/1",
)
HEAD = Source("pressure-head", "1 cm of water is 0.735559 mmHg: arithmetic", Mark.DERIVED)
PORCINE = Source(
    "suzuki-2009",
    "Suzuki and others. J Cataract Refract Surg 2009, pigs' eyes",
    Mark.READ,
    "doi 10.1016/j.jcrs.2009.05.057",
)
FLUIDICS = Source(
    "fluidics-trial-2014",
    "Trial of fluid settings, 80 eyes, as reported in Healio, August 2014",
    Mark.READ,
)
TRIAMCINOLONE = Source(
    "triamcinolone-label",
    "Label of a preservative-free triamcinolone 40 mg/mL",
    Mark.READ,
    "ndclist.com/ndc/0065-0543/label",
)
TRIAMCINOLONE_WASHED = Source(
    "burk-2005",
    "Burk, CRSToday, April 2005: washing and ten-fold dilution",
    Mark.READ,
    "crstoday.com/articles/2005-apr/crst0405_f4_burk-html",
)
CEFUROXIME = Source(
    "cefuroxime-label",
    "Label of the licensed cefuroxime 50 mg for intracameral use",
    Mark.READ,
    "rxreasoner.com/monographs/aprokam/precautions",
)
CEFUROXIME_SLIP = Source(
    "wong-2015",
    "Wong and others. JAMA Ophthalmol 2015: 9 mg in 13 eyes, macular oedema in 6",
    Mark.READ,
    "pmc.ncbi.nlm.nih.gov/articles/PMC5565143",
)
CEFUROXIME_ALERT = Source(
    "cefuroxime-alert", "Royal college safety alert on cefuroxime products", Mark.READ
)
SYRINGES = Source(
    "lockington-2010",
    "Lockington and others. J Cataract Refract Surg 2010: mixing in small syringes",
    Mark.READ,
    "doi 10.1016/j.jcrs.2009.08.034",
)
MOXIFLOXACIN_ALERT = Source(
    "moxifloxacin-alert-2022",
    "Clinical alert of a surgeons' society, 2022: strengths of moxifloxacin",
    Mark.READ,
    "ascrs.org/clinical-education/clinical-reports/2022-cr-clinical-alert",
)
MOXIFLOXACIN_DILUTED = Source(
    "moxifloxacin-recommendation",
    "Recommendation on intracameral moxifloxacin, 0.15 %",
    Mark.READ,
    "aao.org/editors-choice/new-recommendations-prophylactic-intracameral-moxi",
)
MOXIFLOXACIN_OLDER = Source(
    "moxifloxacin-2008", "J Cataract Refract Surg 2008: 0.1 mg", Mark.READ, "PMID 18571078"
)
MOXIFLOXACIN_BRAZIL = Source(
    "moxifloxacin-brazil",
    "Arq Bras Oftalmol: 5.45 mg/mL",
    Mark.READ,
    "scielo.br/j/abo/a/ZJsf88tK6PTNnXRkfgTM4jn",
)
PHENYLEPHRINE_TRIAL = Source(
    "lorente-2012", "Lorente and others. Ophthalmology 2012: phenylephrine 1.5 %", Mark.READ
)
PHENYLEPHRINE_POSTER = Source(
    "phenylephrine-poster-2013", "Congress poster, Warsaw 2013: from 2.5 %", Mark.READ
)
COMBINED_MYDRIATIC = Source(
    "combined-mydriatic-label",
    "Label of tropicamide 0.02 %, phenylephrine 0.31 %, lidocaine 1 %",
    Mark.READ,
    "medicines.org.uk/emc/product/7254/smpc",
)
ACETYLCHOLINE = Source(
    "acetylcholine-label",
    "Label of acetylcholine 20 mg for intraocular use",
    Mark.READ,
    "druginserts.com/lib/rx/meds/miochol-e",
)
CARBACHOL = Source(
    "carbachol-label",
    "Label of carbachol 0.01 %",
    Mark.READ,
    "drugs.com/dosage/miostat.html",
)
LIDOCAINE_UK = Source(
    "lidocaine-uk-label", "UK product label: 200 mg in total", Mark.READ, note="As in the pathways."
)
LIDOCAINE_IRISH = Source(
    "lidocaine-irish-label", "Irish product label: 4.5 mg/kg, ceiling 200 mg", Mark.READ
)
LIDOCAINE_US = Source(
    "lidocaine-us-label",
    "US labels: 4.5 mg/kg, ceiling 300 mg; with adrenaline 7 mg/kg, ceiling 500 mg",
    Mark.READ,
)
LIDOCAINE_AUSTRALIA = Source(
    "lidocaine-australia", "New South Wales page: plain 3 mg/kg", Mark.READ
)
LIPID = Source(
    "lipid-guideline-2010",
    "Anaesthetists' guideline on severe local anaesthetic toxicity, 2010",
    Mark.READ,
    "rightdecisions.scot.nhs.uk",
    "As restated by a health service; the guideline itself is from memory.",
)
ACETAZOLAMIDE = Source(
    "acetazolamide-label",
    "Label of acetazolamide 500 mg for injection",
    Mark.READ,
    "drugs.com/uk/acetazolamide-500-mg",
)
MANNITOL = Source(
    "mannitol-label",
    "US label of mannitol, reduction of eye pressure",
    Mark.READ,
    "pfizermedicalinformation.com/mannitol/highlights",
)
MANNITOL_OLDER = Source(
    "mannitol-formulary", "Older formulary range 0.25 to 2 g/kg, second-hand", Mark.READ
)
FRAGMENT_TIMING = Source(
    "vanner-2011", "Vanner, Stewart 2011: each further week", Mark.READ, "pubmed 21683330"
)
GAS_LEFT = Source("gas-in-chamber", "Gas in the chamber: 14 days", Mark.READ, "eyenews.uk.com")
