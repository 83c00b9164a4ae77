package puzzleworkshop.artwork.pixels;

/**
 * Turns stored pixels as they are asked for. Rows of a picture that lies on its side are columns of the stored one: they
 * are fetched some dozens at a time, so that each stored row is visited once for all of them.
 */
final class TurnedPixels implements TurnedRows {

    private static final int BLOCK = 48;

    /** Copies stored bytes from an index. */
    @FunctionalInterface
    interface Source {
        void copy(int index, int length, byte[] into, int at);
    }

    private final Orientation orientation;
    private final int quarterTurns;
    private final int storedWidth;
    private final int channels;
    private final Source source;
    private final int width;
    private final int height;
    private final boolean lying;
    private final byte[][] block;
    private final byte[] pixels;
    private int blockStart = -1;

    TurnedPixels(int storedWidth, int storedHeight, int channels, int exif, int quarterTurns, Source source) {
        this.orientation = new Orientation(exif, storedWidth, storedHeight);
        this.quarterTurns = quarterTurns;
        this.storedWidth = storedWidth;
        this.channels = channels;
        this.source = source;
        boolean swapped = quarterTurns % 2 == 1;
        this.width = swapped ? orientation.uprightHeight() : orientation.uprightWidth();
        this.height = swapped ? orientation.uprightWidth() : orientation.uprightHeight();
        this.lying = exif >= 5 != swapped;
        this.block = new byte[lying ? Math.min(BLOCK, height) : 1][width * channels];
        this.pixels = new byte[Math.max(block.length, lying ? 1 : storedWidth) * channels];
    }

    @Override
    public int width() {
        return width;
    }

    @Override
    public int height() {
        return height;
    }

    @Override
    public int channels() {
        return channels;
    }

    @Override
    public byte[] row(int y) {
        if (!lying) {
            return standing(y);
        }
        if (blockStart < 0 || y < blockStart || y >= blockStart + block.length) {
            blockStart = Math.clamp(y, 0, height - block.length);
            fetchBlock();
        }
        return block[y - blockStart];
    }

    private byte[] standing(int y) {
        byte[] row = block[0];
        int first = stored(0, y);
        boolean backwards = width > 1 && stored(1, y) < first;
        if (!backwards) {
            source.copy(first, row.length, row, 0);
            return row;
        }
        source.copy(stored(width - 1, y), row.length, pixels, 0);
        for (int x = 0; x < width; x++) {
            System.arraycopy(pixels, (width - 1 - x) * channels, row, x * channels, channels);
        }
        return row;
    }

    /** Turned column x is a stored row; of it the pixels of all rows of the block lie side by side. */
    private void fetchBlock() {
        int rows = block.length;
        boolean backwards = rows > 1 && stored(0, blockStart + 1) < stored(0, blockStart);
        int firstY = backwards ? blockStart + rows - 1 : blockStart;
        for (int i = 0; i < width; i++) {
            // In stored order, top to bottom, so that a mapped file is read forwards.
            int x = stored(width - 1, 0) < stored(0, 0) ? width - 1 - i : i;
            source.copy(stored(x, firstY), rows * channels, pixels, 0);
            for (int r = 0; r < rows; r++) {
                int from = (backwards ? rows - 1 - r : r) * channels;
                System.arraycopy(pixels, from, block[r], x * channels, channels);
            }
        }
    }

    private int stored(int x, int y) {
        int w = orientation.uprightWidth();
        int h = orientation.uprightHeight();
        int u = switch (quarterTurns) {
            case 1 -> y;
            case 2 -> w - 1 - x;
            case 3 -> w - 1 - y;
            default -> x;
        };
        int v = switch (quarterTurns) {
            case 1 -> h - 1 - x;
            case 2 -> h - 1 - y;
            case 3 -> x;
            default -> y;
        };
        return (orientation.storedY(u, v) * storedWidth + orientation.storedX(u, v)) * channels;
    }
}
