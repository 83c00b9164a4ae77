package puzzleworkshop.database;

/** The database cannot be started: what is wrong and what the person at the keyboard can do about it. */
class CannotStart extends RuntimeException {

    private final String remedy;

    CannotStart(String what, String remedy, Throwable cause) {
        super(what, cause);
        this.remedy = remedy;
    }

    String remedy() {
        return remedy;
    }
}
