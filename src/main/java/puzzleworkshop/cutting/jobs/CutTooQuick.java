package puzzleworkshop.cutting.jobs;

import puzzleworkshop.measure.Minutes;
import puzzleworkshop.measure.Refused;

/** A cut that ran so much shorter than its estimate that its clock says nothing about it; whoever was there is asked. */
public class CutTooQuick extends Refused {

    CutTooQuick(String label, Minutes ran, Minutes expected) {
        super("cutting.job.too-quick", label, ran, expected);
    }
}
