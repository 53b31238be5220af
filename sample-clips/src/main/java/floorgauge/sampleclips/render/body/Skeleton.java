package floorgauge.sampleclips.render.body;

import floorgauge.court.track.Joint;
import floorgauge.sampleclips.render.value.Vec3;

/**
 * A posed body.
 *
 * @param proportions its sizes
 * @param pelvis middle of the hip joints
 * @param pelvisAxes directions of the pelvis
 * @param chest middle of the shoulder joints
 * @param chestAxes directions of the chest
 * @param head middle of the head
 * @param headAxes directions of the head
 * @param leftArm shoulder, elbow, wrist
 * @param rightArm shoulder, elbow, wrist
 * @param leftLeg hip, knee, ankle
 * @param rightLeg hip, knee, ankle
 * @param leftFoot the shoe's directions
 * @param rightFoot the shoe's directions
 */
public record Skeleton(
        Proportions proportions,
        Vec3 pelvis,
        Axes pelvisAxes,
        Vec3 chest,
        Axes chestAxes,
        Vec3 head,
        Axes headAxes,
        Limb leftArm,
        Limb rightArm,
        Limb leftLeg,
        Limb rightLeg,
        Axes leftFoot,
        Axes rightFoot) {

    /** Where a joint of the COCO set lies: ears, eyes and nose on the skin, all others inside the body. */
    public Vec3 joint(Joint joint) {
        double h = proportions.head();
        return switch (joint) {
            case NOSE -> headAxes.from(head, 0.46 * h, 0, -0.06 * h);
            case LEFT_EYE -> headAxes.from(head, 0.37 * h, 0.135 * h, 0.06 * h);
            case RIGHT_EYE -> headAxes.from(head, 0.37 * h, -0.135 * h, 0.06 * h);
            case LEFT_EAR -> headAxes.from(head, -0.02 * h, 0.32 * h, 0);
            case RIGHT_EAR -> headAxes.from(head, -0.02 * h, -0.32 * h, 0);
            case LEFT_SHOULDER -> leftArm.root();
            case RIGHT_SHOULDER -> rightArm.root();
            case LEFT_ELBOW -> leftArm.hinge();
            case RIGHT_ELBOW -> rightArm.hinge();
            case LEFT_WRIST -> leftArm.end();
            case RIGHT_WRIST -> rightArm.end();
            case LEFT_HIP -> leftLeg.root();
            case RIGHT_HIP -> rightLeg.root();
            case LEFT_KNEE -> leftLeg.hinge();
            case RIGHT_KNEE -> rightLeg.hinge();
            case LEFT_ANKLE -> leftLeg.end();
            case RIGHT_ANKLE -> rightLeg.end();
        };
    }
}
