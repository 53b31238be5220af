package floorgauge.sampleclips.render.body;

import floorgauge.sampleclips.scene.Person;

/**
 * Sizes of a body in metres. Segment lengths as shares of the height follow Drillis and Contini (1966), as printed in
 * Winter, Biomechanics and Motor Control of Human Movement, 2009, figure 4.1: hip 0.530, knee 0.285, ankle 0.039,
 * shoulder 0.818, upper arm 0.186, forearm 0.146, hand 0.108, foot 0.152, chin to crown 0.130 (from memory).
 *
 * @param height sole to crown
 * @param girth scale of every thickness: 1 for an average build at 1.9 m
 */
public record Proportions(double height, double girth) {

    public static Proportions of(Person person) {
        return new Proportions(person.heightMetres(), person.build() * person.heightMetres() / 1.9);
    }

    public double ankle() {
        return 0.039 * height;
    }

    public double shank() {
        return 0.246 * height;
    }

    public double thigh() {
        return 0.245 * height;
    }

    /** Hip joint above the floor, legs straight. */
    public double hip() {
        return 0.530 * height;
    }

    /** Hip joints from the middle of the pelvis. */
    public double hipHalf() {
        return 0.047 * height;
    }

    /** Middle of the hips to the middle of the shoulders. */
    public double trunk() {
        return 0.288 * height;
    }

    /** Shoulder joints from the spine. */
    public double shoulderHalf() {
        return 0.100 * height * Math.sqrt(girth * 1.9 / height);
    }

    public double upperArm() {
        return 0.176 * height;
    }

    public double forearm() {
        return 0.146 * height;
    }

    public double hand() {
        return 0.105 * height;
    }

    public double foot() {
        return 0.155 * height;
    }

    public double head() {
        return 0.130 * height;
    }
}
