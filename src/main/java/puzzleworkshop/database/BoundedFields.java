package puzzleworkshop.database;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;

/**
 * Rows on their way into a table, in the text format of PostgreSQL's COPY (fields parted by tabs, rows by line feeds; within
 * a value both are written as escapes), stopped where a field is longer than its column can mean. A number of eighty million
 * letters would be refused by the database too, but it comes back whole in what it says, and is written whole into two
 * diaries.
 */
final class BoundedFields extends FilterInputStream {

    /** Of a column that may hold as much as the database takes: texts, pictures, JSON. */
    static final int UNBOUNDED = Integer.MAX_VALUE;

    private final int[] longest;
    private int field;
    private long length;

    /** @param longest how many bytes each column's value may have as it is written in the file, in the file's order */
    BoundedFields(InputStream rows, int[] longest) {
        super(rows);
        this.longest = longest.clone();
    }

    /** @throws IOException also when a field is too long, or a row has more fields than the table has columns */
    @Override
    public int read(byte[] into, int from, int count) throws IOException {
        int got = in.read(into, from, count);
        for (int i = from; i < from + got; i++) {
            see(into[i]);
        }
        return got;
    }

    @Override
    public int read() throws IOException {
        int one = in.read();
        if (one >= 0) {
            see((byte) one);
        }
        return one;
    }

    private void see(byte one) throws IOException {
        if (one == '\t') {
            field++;
            length = 0;
            if (field >= longest.length) {
                throw new IOException("a row with more fields than its table has columns");
            }
        } else if (one == '\n') {
            field = 0;
            length = 0;
        } else {
            length++;
            if (length > longest[field]) {
                throw new IOException("a value too long for column " + (field + 1));
            }
        }
    }
}
