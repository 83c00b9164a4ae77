package puzzleworkshop.delivery;

import puzzleworkshop.runtime.Change;

/** Told after a change to a parcel is safe in the database, so that open screens can show it. */
public record ParcelChanged(ParcelId parcel) implements Change {}
