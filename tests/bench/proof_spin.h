/* The steps as masks over bits, read from a file of numbers; proof_spin.py says in which order. */

enum { MOVES, DECIDES, ENDS };
enum { BROKEN = -1, STATES = 16 /* of one machine, at most: four bits */ };

typedef struct { int kind, first, count, reads, shift, shots; } Node;
typedef struct { int needs, keep, add, to; } Move; /* where a branch decides: what must be gone */
typedef struct { int nodes, moves, kinds, shots, machines, bits; } Sizes;

static Sizes *sizes;
static Node *node;
static Move *move;
static int *shot_of; /* by node and what it reads */
static int *breaks; /* by shot */
static int *after; /* by shot, machine and its state */
static int *lost, *good; /* by machine its lost state, and by machine and state whether it is good */

static void load(void)
{
	FILE *file = fopen("walk.table", "rb");
	long size = -1;
	int *numbers = NULL;
	if (file && !fseek(file, 0, SEEK_END) && (size = ftell(file)) > 0)
		numbers = malloc(size);
	if (!numbers || fseek(file, 0, SEEK_SET) || fread(numbers, 1, size, file) != (size_t) size)
		exit(3);
	fclose(file);
	sizes = (Sizes *) numbers;
	node = (Node *) (sizes + 1);
	move = (Move *) (node + sizes->nodes);
	shot_of = (int *) (move + sizes->moves);
	breaks = shot_of + sizes->kinds;
	after = breaks + sizes->shots;
	lost = after + sizes->shots * sizes->machines * STATES;
	good = lost + sizes->machines;
}

static int is_bad(int machines, int at_end)
{
	for (int m = 0; m < sizes->machines; m++) {
		int state = machines >> 4 * m & 15;
		if (state == lost[m] || (at_end && !good[m * STATES + state]))
			return 1;
	}
	return 0;
}

/* Put what happens at a node into all machines; return whether one is lost by it. */
static int happens(int at, int bits, int *machines, int at_end)
{
	const Node *here = node + at;
	int shot = shot_of[here->shots + ((bits & here->reads) >> here->shift)], moved = 0;
	if (shot) {
		const int *row = after + shot * sizes->machines * STATES;
		for (int m = 0; m < sizes->machines; m++, row += STATES)
			moved |= row[*machines >> 4 * m & 15] << 4 * m;
		*machines = moved;
	}
	return breaks[shot] || ((shot || at_end) && is_bad(*machines, at_end));
}

static void begin(void)
{
	load();
	now.at = 0;
	now.bits = sizes->bits;
}

static int may(int k)
{
	if (now.at == BROKEN || node[now.at].kind != MOVES || k >= node[now.at].count)
		return 0;
	int needs = move[node[now.at].first + k].needs;
	return !needs || now.bits & needs;
}

static int is_broken(void)
{
	return now.at == BROKEN;
}

static void make(int k)
{
	const Move *made = move + node[now.at].first + k;
	int machines = now.machines, broken = happens(now.at, now.bits, &machines, 0);
	while (!broken) {
		now.bits = (now.bits & made->keep) | made->add;
		now.at = made->to;
		if (node[now.at].kind != DECIDES)
			break;
		made = move + node[now.at].first;
		while (now.bits & made->needs)
			made++;
	}
	if (!broken && node[now.at].kind == ENDS)
		broken = happens(now.at, now.bits, &machines, 1);
	now.machines = machines;
	if (broken)
		now.at = BROKEN;
}
