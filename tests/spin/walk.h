/* What a move does to a walk, over the table that writing.py makes of a pathway and a rule. */

enum { QUESTION, ACTION, BRANCH, HANDOVER, OUTCOME };
enum { SURELY, POSSIBLY, KNOWN, STALE, UNKNOWN };

static int *T, *STEPS, *MOMENTS, *CONDITIONS, *FIELDS;
static int fields, steps, first_step, save, apart;

/* The file: "fields steps moments conditions first save apart", then by each of them an offset, then
 * numbers to which the offsets point. */
static void load(void)
{
	FILE *file;
	int size, i;
	if (T) return;
	file = fopen(getenv("WALK"), "r");
	if (!file || fscanf(file, "%d", &size) != 1) { puts("no table"); exit(3); }
	T = malloc(size * sizeof(int));
	for (i = 0; i < size; i++)
		if (fscanf(file, "%d", T + i) != 1) { puts("a short table"); exit(3); }
	fclose(file);
	fields = T[0]; steps = T[1]; first_step = T[4]; save = T[5]; apart = T[6];
	FIELDS = T + 7;                     /* of each: every bit, the bits at first, is it tracked */
	STEPS = FIELDS + 3 * fields;
	MOMENTS = STEPS + steps;
	CONDITIONS = MOMENTS + T[2];
	if (fields > FINDINGS) { puts("too many findings"); exit(3); }
}

static int all(int *part)                /* count, then (kind, finding, bits) */
{
	int i, n = *part++;
	for (i = 0; i < n; i++, part += 3) {
		int now_known = now.know[part[1]], every = FIELDS[3 * part[1]], so = 0;
		switch (part[0]) {
		case SURELY: so = !(now_known & ~part[2]); break;
		case POSSIBLY: so = (now_known & part[2]) != 0; break;
		case KNOWN: so = (now_known & (now_known - 1)) == 0; break;
		case STALE: so = now.stale[part[1]]; break;
		case UNKNOWN: so = now_known == every && !now.stale[part[1]]; break;
		}
		if (!so) return 0;
	}
	return 1;
}

static int is_so(int condition)          /* count of parts, then (negated, offset of the part) */
{
	int *it = T + CONDITIONS[condition], i, n = *it++;
	for (i = 0; i < n; i++, it += 2)
		if (all(T + it[1]) == it[0]) return 0;
	return 1;
}

static int letter(int **list)            /* count, then conditions, of which one suffices */
{
	int i, n = *(*list)++, found = 0;
	for (i = 0; i < n; i++)
		if (is_so((*list)[i])) found = 1;
	*list += n;
	return found;
}

static void show(int moment)             /* is it looked at, then the lists of P, Q, R and S */
{
	int *it = T + MOMENTS[moment];
	now.seen = *it++;
	now.P = letter(&it);
	now.Q = letter(&it);
	now.R = letter(&it);
	now.S = letter(&it);
	if (!now.seen) now.P = now.Q = now.R = now.S = 0;
}

static void change(int *ops)             /* count, then (finding, bits; 0: it goes stale) */
{
	int i, n = *ops++;
	for (i = 0; i < n; i++, ops += 2) {
		int *field = FIELDS + 3 * ops[0];
		if (ops[1]) {
			now.know[ops[0]] = ops[1];
			now.stale[ops[0]] = 0;
		} else if (now.know[ops[0]] != field[0]) {
			now.know[ops[0]] = field[0];
			now.stale[ops[0]] = field[2];
		}
	}
}

/* A step: kind, pathway, number of its bound or -1, at most, after that, offset of what is asked
 * no more from there on (count, findings, count, bounds); then by its kind. */
#define STEP(place) (T + STEPS[place])
#define REST 6

static void forget(int *gone)
{
	int i, n = *gone++;
	for (i = 0; i < n; i++) {
		now.know[gone[i]] = FIELDS[3 * gone[i]];
		now.stale[gone[i]] = 0;
	}
	gone += n;
	for (i = 0; i < *gone; i++) now.times[gone[i + 1]] = 0;
}

static void enter(int target)
{
	int left[64], n = 0, i;
	for (;;) {
		int *step = STEP(target), been = 0;
		now.at = target;
		for (i = 0; i < n; i++) been |= left[i] == target;
		if (step[2] < 0 || been || now.times[step[2]] < step[3]) {
			if (step[2] >= 0 && !been) now.times[step[2]]++;
			forget(T + step[5]);
			return;
		}
		left[n++] = target;
		if (n == 64) { puts("too many exits"); exit(3); }
		target = step[4];
	}
}

static void forget_times(int pathway)
{
	int i;
	for (i = 0; i < steps; i++)
		if (STEP(i)[1] == pathway && STEP(i)[2] >= 0) now.times[STEP(i)[2]] = 0;
}

/* A question: finding, count, then (bits or -1, moment, target). */
static int known_answer(int *step)
{
	int i, known = now.know[step[0]];
	if (known == FIELDS[3 * step[0]]) return -1;
	for (i = 0; i < step[1]; i++)
		if (step[2 + 3 * i] > 0 && !(known & ~step[2 + 3 * i])) return i;
	return -1;
}

/* A branch: otherwise or -1, not known or -1, count, then (target, surely, possibly). */
static int decided(int *step)
{
	int i, open = 0;
	for (i = 0; i < step[2]; i++)
		if (all(T + step[4 + 3 * i])) return step[3 + 3 * i];
	for (i = 0; i < step[2]; i++)
		if (all(T + step[5 + 3 * i])) open = 1;
	return open ? step[1] : step[0];
}

/* A handover: first step there, pathway there, moment, count, then (outcome, target). */
static int comes_back(int outcome)
{
	int *step, i;
	if (!now.depth) return -1;
	step = STEP(now.back[now.depth - 1]) + REST;
	for (i = 0; i < step[3]; i++)
		if (step[4 + 2 * i] == outcome) return step[5 + 2 * i];
	return -1;
}

/* An action: target, offset of what follows all lines, count, then (moment, offset). */
static void settle(void)
{
	int silent = 0, target;
	for (;;) {
		int *step = STEP(now.at) + REST;
		if (++silent > 10000) { puts("round in silence"); exit(3); }
		switch (STEP(now.at)[0]) {
		case QUESTION:
			target = known_answer(step);
			if (target < 0) return;
			enter(step[4 + 3 * target]);
			break;
		case ACTION:
			if (step[2]) return;
			change(T + step[1]);
			enter(step[0]);
			break;
		case BRANCH:
			target = decided(step);
			if (target < 0) return;
			enter(target);
			break;
		case OUTCOME:
			target = comes_back(now.at);
			if (target < 0) return;
			forget_times(STEP(now.at)[1]);
			now.back[--now.depth] = 0;
			enter(target);
			break;
		default:
			return;
		}
	}
}

static void set_out(void)
{
	int i;
	load();
	for (i = 0; i < fields; i++) now.know[i] = FIELDS[3 * i + 1];
	enter(first_step);
	settle();
}

static int may(int choice)
{
	int *step = STEP(now.at) + REST;
	if (now.ended) return 0;
	if (apart && now.seen) return choice == 0;
	if (STEP(now.at)[0] != QUESTION) return choice == 0;
	return choice < step[1] && (step[2 + 3 * choice] < 0 || step[2 + 3 * choice] & now.know[step[0]]);
}

static void answer(int *step, int choice)
{
	int bits = step[2 + 3 * choice];
	if (bits > 0) {
		now.know[step[0]] &= bits;
		now.stale[step[0]] = 0;
	}
	show(step[3 + 3 * choice]);
	enter(step[4 + 3 * choice]);
	settle();
}

static void do_line(int *step)
{
	int *each = step + 3 + 2 * now.line;
	show(each[0]);
	change(T + each[1]);
	if (++now.line < step[2]) return;
	now.line = 0;
	change(T + step[1]);
	enter(step[0]);
	settle();
}

static void hand_over(int *step)
{
	show(step[2]);
	if (step[3]) now.back[now.depth++] = now.at;
	else while (now.depth) now.back[--now.depth] = 0;
	forget_times(step[1]);
	enter(step[0]);
	settle();
}

/* After a walk that does not end the operation what could still be kept is shown once. */
static void finish(void)
{
	if (save && !now.saved) {
		now.saved = 1;
		now.P = save & 1; now.Q = save >> 1 & 1; now.R = save >> 2 & 1; now.S = save >> 3 & 1;
		now.seen = 1;
		return;
	}
	now.P = now.Q = now.R = now.S = now.seen = 0;
	now.ended = 1;
}

/* An outcome: does the operation go on elsewhere, count, then moments, its own the last. */
static void close_walk(int *step)
{
	if (now.line < step[1]) { show(step[2 + now.line++]); return; }
	if (!step[0]) now.saved = 1;
	finish();
}

static void go_on(int choice)
{
	int *step = STEP(now.at) + REST;
	if (apart && now.seen) {
		now.P = now.Q = now.R = now.S = now.seen = 0;
		return;
	}
	switch (STEP(now.at)[0]) {
	case QUESTION: answer(step, choice); break;
	case ACTION: do_line(step); break;
	case HANDOVER: hand_over(step); break;
	case OUTCOME: close_walk(step); break;
	default: finish();
	}
}
