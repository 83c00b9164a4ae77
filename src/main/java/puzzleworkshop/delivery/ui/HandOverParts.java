package puzzleworkshop.delivery.ui;

import org.springframework.stereotype.Component;
import puzzleworkshop.delivery.ParcelJourney;
import puzzleworkshop.delivery.Parcels;
import puzzleworkshop.delivery.WayAdvice;
import puzzleworkshop.delivery.address.Addresses;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.workshop.SignedIn;

/** What a card of a hand-over works with. */
@Component
record HandOverParts(
        Parcels parcels,
        ParcelJourney journey,
        WayAdvice advice,
        Addresses addresses,
        ParcelLetters letters,
        SignedIn signedIn,
        Formatter figures) {}
