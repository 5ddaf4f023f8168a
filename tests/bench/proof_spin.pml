/* A walk over C tables, watched by all machines at once: the encoding that suits SPIN best. */
int at;
int bits;
int machines;

c_code {
#include "proof_spin.h"
}

active proctype walk()
{
	c_code { begin(); };
end:	do
	:: d_step { c_expr { may(0) } -> c_code { make(0); } }
	:: d_step { c_expr { may(1) } -> c_code { make(1); } }
	:: d_step { c_expr { may(2) } -> c_code { make(2); } }
	:: d_step { c_expr { may(3) } -> c_code { make(3); } }
	:: d_step { c_expr { may(4) } -> c_code { make(4); } }
	:: d_step { c_expr { may(5) } -> c_code { make(5); } }
	:: d_step { c_expr { may(6) } -> c_code { make(6); } }
	:: d_step { c_expr { may(7) } -> c_code { make(7); } }
	:: c_expr { is_broken() } -> assert(false)
	od
}
