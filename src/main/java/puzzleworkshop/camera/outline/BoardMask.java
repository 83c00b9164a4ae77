package puzzleworkshop.camera.outline;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import puzzleworkshop.camera.rings.Regions;

/** Which cells of the ground are board: first what is surely no backdrop, then a limit half way to the boards' own colour. */
final class BoardMask {

    private static final double SURE = 2.8;
    private static final double LARGEST_LIMIT = 7;

    /** Mean deviation of a colour's logarithm above which boards are no wood; strongly grained wood has a tenth. */
    private static final double MANY_COLOURS = 0.25;

    /** Share of a dark board's darkness below which paper is only shaded. */
    private static final double DARK_ENOUGH = 0.45;

    final Ground ground;
    final PaperLight paper;
    final Backdrop backdrop;
    /** Level, red less blue, red less green of each cell, against white paper there. */
    final float[][] colour = new float[3][];

    final boolean[] board;
    /** Whether the boards differ from the backdrop by colour and not by brightness alone. */
    boolean byColour = true;
    /** Whether the boards have many colours, as printed pictures have. */
    boolean varied;
    /** Mean light of the boards against white paper, by channel. */
    final double[] wood = new double[3];
    /** How far apart boards and backdrop are, in spreads of the backdrop. */
    double apart;

    /** What shadow adds to red less blue for each unit of the level, and to red less green. */
    double tintRedBlue;

    double tintRedGreen;

    /** Of each cell from its backdrop, in spreads of that. */
    final float[] far;

    private final boolean pictures;

    /** @param pictures whether what lies there may have many colours; else all of it is taken for one wood */
    BoardMask(Ground ground, double smallestAreaMm2, boolean pictures) {
        this.ground = ground;
        this.pictures = pictures;
        paper = PaperLight.of(ground);
        int n = ground.kind.length;
        for (int i = 0; i < 3; i++) {
            colour[i] = new float[n];
        }
        far = new float[n];
        board = new boolean[n];
        colours();
        backdrop = Backdrop.of(tableColours());
        distances();
        int smallest = (int) (smallestAreaMm2 / (Ground.STEP * Ground.STEP));
        decide(smallest);
        double[] tint = TintedShade.slopes(this);
        tintRedBlue = tint[0];
        tintRedGreen = tint[1];
    }

    private void colours() {
        IntStream.range(0, ground.rows).parallel().forEach(row -> {
            double[] white = new double[3];
            for (int cell = row * ground.columns; cell < (row + 1) * ground.columns; cell++) {
                paper.at(ground.x(cell), ground.y(cell), white);
                double r = Math.log(ground.light[0][cell] / white[0] + 0.012);
                double g = Math.log(ground.light[1][cell] / white[1] + 0.012);
                double b = Math.log(ground.light[2][cell] / white[2] + 0.012);
                colour[0][cell] = (float) ((r + g + b) / 3);
                colour[1][cell] = (float) (r - b);
                colour[2][cell] = (float) (r - g);
            }
        });
    }

    /** Table cells near the sheet's edge, or near the cards. */
    private List<float[]> tableColours() {
        List<float[]> colours = new ArrayList<>();
        for (int row = 0; row < ground.rows; row += 2) {
            for (int column = 0; column < ground.columns; column += 2) {
                int cell = row * ground.columns + column;
                if (ground.kind[cell] == Ground.Kind.TABLE && nearSheet(cell)) {
                    colours.add(new float[] {colour[0][cell], colour[1][cell], colour[2][cell]});
                }
            }
        }
        return colours;
    }

    private boolean nearSheet(int cell) {
        double x = ground.x(cell);
        double y = ground.y(cell);
        for (var card : ground.seen.cards()) {
            double px = card.cardX(x, y);
            double py = card.cardY(x, y);
            double out = Math.max(
                    Math.max(-px, px - ground.seen.sheet().width()),
                    Math.max(-py, py - ground.seen.sheet().height()));
            if (out < 14) {
                return true;
            }
        }
        return false;
    }

    private void distances() {
        for (int cell = 0; cell < far.length; cell++) {
            double level = colour[0][cell];
            double rb = colour[1][cell];
            double rg = colour[2][cell];
            far[cell] = (float)
                    switch (ground.kind[cell]) {
                        case UNSEEN, MARKER -> 0;
                        case PAPER -> Backdrop.distance(Backdrop.PAPER, level, rb, rg);
                        // ink and its edges are dark without colour: only the colour counts there
                        case PRINTED -> Backdrop.distance(Backdrop.PAPER, Math.clamp(level, -1.2, 0), rb, rg);
                        case RIM ->
                            Math.min(
                                    Backdrop.distance(Backdrop.PAPER, level, rb, rg),
                                    backdrop.fromTable((float) level, (float) rb, (float) rg));
                        case TABLE -> backdrop.fromTable((float) level, (float) rb, (float) rg);
                    };
        }
    }

    private void decide(int smallest) {
        byte[] state = marked(SURE);
        List<int[]> parts = Regions.parts(state, ground.columns, ground.rows, smallest);
        int[] core = core(parts);
        if (core.length < 60) {
            byDarkness(smallest);
            return;
        }
        TintedShade tinted = new TintedShade(colour, core);
        boolean[] shadows = new boolean[far.length];
        if (!pictures && tinted.found) {
            core = tinted.withoutShade(core);
            shadows = tinted.shadows(parts);
        }
        float[] all = new float[core.length];
        for (int i = 0; i < core.length; i++) {
            all[i] = far[core[i]];
        }
        Arrays.sort(all);
        apart = all[all.length / 2];
        double lower = all[all.length / 10];
        double limit = Math.clamp(0.45 * Math.min(apart, 1.5 * lower), SURE, LARGEST_LIMIT);
        read(core);
        state = marked(limit);
        BoardColour face = new BoardColour(this);
        for (int cell = 0; cell < far.length; cell++) {
            // a shadow on paper that is as brown as dark wood
            if (shadows[cell]
                    || ground.kind[cell] == Ground.Kind.PAPER
                            && face.darkness(Math.exp(colour[0][cell])) < DARK_ENOUGH) {
                state[cell] = 0;
            }
        }
        take(state, smallest);
    }

    /** No colour anywhere: a board as grey as paper, told by its brightness. */
    private void byDarkness(int smallest) {
        byColour = false;
        byte[] state = new byte[far.length];
        for (int cell = 0; cell < far.length; cell++) {
            state[cell] = (byte) (Float.isNaN(far[cell]) ? 2 : isDark(cell) ? 1 : 0);
        }
        Regions.settle(state, ground.columns, ground.rows);
        int[] core = core(Regions.parts(state, ground.columns, ground.rows, smallest));
        if (core.length < 60) {
            return;
        }
        read(core);
        double level = 0;
        for (int cell : core) {
            level += colour[0][cell] / core.length;
        }
        // no shadow is as dark as this
        double limit = Math.min(level / 2, level + 0.9);
        for (int cell = 0; cell < far.length; cell++) {
            state[cell] = (byte) (Float.isNaN(far[cell]) ? 2 : isDark(cell) && colour[0][cell] < limit ? 1 : 0);
        }
        apart = -level / 0.045;
        take(state, smallest);
    }

    private boolean isDark(int cell) {
        return ground.kind[cell] == Ground.Kind.PAPER && colour[0][cell] < -0.25;
    }

    private byte[] marked(double limit) {
        byte[] state = new byte[far.length];
        for (int cell = 0; cell < far.length; cell++) {
            state[cell] = (byte) (Float.isNaN(far[cell]) ? 2 : far[cell] > limit ? 1 : 0);
        }
        Regions.settle(state, ground.columns, ground.rows);
        return state;
    }

    private void take(byte[] state, int smallest) {
        Regions.open(state, ground.columns, ground.rows);
        for (int[] part : Regions.parts(state, ground.columns, ground.rows, smallest)) {
            for (int cell : part) {
                board[cell] = true;
            }
        }
    }

    /** The deep cells of parts that lie on the sheet (or between the cards). */
    private int[] core(List<int[]> parts) {
        boolean[] in = new boolean[far.length];
        boolean onSheet = ground.seen.sheet().parts() == 1;
        for (int[] part : parts) {
            long inside = Arrays.stream(part)
                    .filter(cell -> !onSheet || ground.isOnSheet(ground.x(cell), ground.y(cell)))
                    .count();
            if (inside > part.length * 0.3) {
                for (int cell : part) {
                    in[cell] = true;
                }
            }
        }
        int[] depth = Regions.depth(in, ground.columns, ground.rows);
        int deepest = Arrays.stream(depth).max().orElse(0);
        int limit = (int) Math.min(6 / Ground.STEP, Math.max(2, 0.4 * deepest));
        List<Integer> core = new ArrayList<>();
        for (int cell = 0; cell < depth.length; cell++) {
            if (depth[cell] >= limit && ground.kind[cell] != Ground.Kind.PRINTED) {
                core.add(cell);
            }
        }
        return core.stream().mapToInt(Integer::intValue).toArray();
    }

    private void read(int[] core) {
        double[] white = new double[3];
        for (int cell : core) {
            paper.at(ground.x(cell), ground.y(cell), white);
            for (int c = 0; c < 3; c++) {
                wood[c] += ground.light[c][cell] / white[c] / core.length;
            }
        }
        for (float[] one : colour) {
            double mean =
                    Arrays.stream(core).mapToDouble(cell -> one[cell]).average().orElse(0);
            double off = Arrays.stream(core)
                    .mapToDouble(cell -> Math.abs(one[cell] - mean))
                    .average()
                    .orElse(0);
            varied |= pictures && off > MANY_COLOURS;
        }
    }
}
