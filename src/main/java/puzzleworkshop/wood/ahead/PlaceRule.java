package puzzleworkshop.wood.ahead;

import puzzleworkshop.wood.play.OpenBoard;

/** Which of the places where a blank fits is taken. The lower the score, the better. */
enum PlaceRule {
    /** The board with least left, there the narrowest strip: full boards first, whole ones stay whole. */
    FULLEST_BOARD {
        @Override
        long score(OpenBoard board, int room, int w, int h) {
            return board.freeArea() * SPREAD + shorter(board, room, w, h) * 64 + longer(board, room, w, h) / 8;
        }
    },
    /** The board with least left, there next to its origin: what is left stays in one piece. */
    CORNER {
        @Override
        long score(OpenBoard board, int room, int w, int h) {
            return board.freeArea() * SPREAD + Math.max(board.x(room) + w, 0) * 8L + (board.y(room) + h) * 8L;
        }
    },
    /** The place that leaves the smallest area of the room it lies in: what people do by hand. */
    SMALLEST_REST {
        @Override
        long score(OpenBoard board, int room, int w, int h) {
            return (board.roomArea(room) - (long) w * h) * SPREAD + shorter(board, room, w, h);
        }
    },
    /** The narrowest strip left beside it. */
    SHORT_SIDE {
        @Override
        long score(OpenBoard board, int room, int w, int h) {
            return shorter(board, room, w, h) * SPREAD + longer(board, room, w, h);
        }
    };

    private static final long SPREAD = 1L << 20;

    /** No place on the board scores less. */
    long least(OpenBoard board) {
        return this == FULLEST_BOARD || this == CORNER ? board.freeArea() * SPREAD : 0;
    }

    abstract long score(OpenBoard board, int room, int w, int h);

    private static long shorter(OpenBoard board, int room, int w, int h) {
        return Math.min(board.roomWidth(room) - w, board.roomHeight(room) - h);
    }

    private static long longer(OpenBoard board, int room, int w, int h) {
        return Math.max(board.roomWidth(room) - w, board.roomHeight(room) - h);
    }
}
