package puzzleworkshop.artwork;

import java.io.InputStream;

/**
 * Reads a large value from the database a slice at a time: the driver would hold a whole value several times over. The
 * column is stored uncompressed, so a slice costs the database only its own pages.
 */
final class SlicedContent extends InputStream {

    private static final int SLICE = 1 << 20;

    /** Bytes from an offset, fewer than asked at the end only. */
    @FunctionalInterface
    interface Slices {
        byte[] at(int from, int length);
    }

    private final Slices slices;
    private byte[] slice = new byte[0];
    private int at;
    private int read;
    private boolean ended;

    SlicedContent(Slices slices) {
        this.slices = slices;
    }

    @Override
    public int read() {
        byte[] one = new byte[1];
        return read(one, 0, 1) < 0 ? -1 : one[0] & 0xFF;
    }

    @Override
    public int read(byte[] into, int offset, int length) {
        if (length == 0) {
            return 0;
        }
        if (at == slice.length && !ended) {
            slice = slices.at(read, SLICE);
            read += slice.length;
            at = 0;
            ended = slice.length < SLICE;
        }
        if (at == slice.length) {
            return -1;
        }
        int got = Math.min(length, slice.length - at);
        System.arraycopy(slice, at, into, offset, got);
        at += got;
        return got;
    }
}
