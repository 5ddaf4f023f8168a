/* Walks of one pathway, read from a table of numbers: a second reading of what a pathway means.
 *
 * One transition is one moment of a walk. P, Q, R and S are what a rule sees there, `seen` is true
 * at the moments it looks at. Once the walk has ended nothing is seen any more. The table is the file named by WALK; writing.py says how it is laid out.
 */

byte know[FINDINGS];   /* by finding, one bit for each value still possible */
byte stale[FINDINGS];  /* whether it was known and went stale; kept only where a rule asks */
byte times[BOUNDS];    /* by bounded step, how often it was entered */
short back[DEPTH];     /* the handovers to come back to */
byte depth;
short at;              /* the step */
byte line;             /* of an action or of what is owed, how many lines are done */
bit P, Q, R, S, seen, saved, ended;

c_code {
#include "walk.h"
}

active proctype walk() {
	d_step { c_code { set_out(); } }
	do
	:: d_step { c_expr { may(0) } -> c_code { go_on(0); } }
	:: d_step { c_expr { may(1) } -> c_code { go_on(1); } }
	:: d_step { c_expr { may(2) } -> c_code { go_on(2); } }
	:: d_step { c_expr { may(3) } -> c_code { go_on(3); } }
	:: d_step { c_expr { may(4) } -> c_code { go_on(4); } }
	:: d_step { c_expr { may(5) } -> c_code { go_on(5); } }
	od
}

ltl every_walk_ends { <> ended }
