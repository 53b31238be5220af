package floorgauge.eval.tracking;

import floorgauge.court.track.ImageBox;

/** Intersection over union of two boxes in the picture; edges are continuous, no pixel is added to a width. */
public final class BoxSimilarity implements Similarity<ImageBox> {

    @Override
    public double of(ImageBox truth, ImageBox result) {
        return truth.intersectionOverUnion(result);
    }
}
