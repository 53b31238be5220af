package floorgauge.sampleclips.truth;

/** Whether a joint can be seen, with the figures of the COCO keypoint format. */
public enum Visibility {
    /** Outside the picture. */
    OUTSIDE(0),
    /** Inside the picture, behind another body, the ball, a fitting, or the person's own body. */
    HIDDEN(1),
    /** Inside the picture with nothing before it but the skin and cloth around it. */
    SEEN(2);

    private final int coco;

    Visibility(int coco) {
        this.coco = coco;
    }

    /** COCO's figure: 0, 1 or 2. */
    public int coco() {
        return coco;
    }
}
