package floorgauge.sampleclips.scene;

/** What a person's body is doing; legs follow the speed and the gait phase in all but {@link #SIT}. */
public enum Action {
    /** Upright, arms loose; walks and runs with the speed. */
    MOVE,
    /** Knees bent, wide stance, arms out. */
    DEFEND,
    /** Wide stance, arms crossed on the chest or at the groin. */
    SCREEN,
    /** Knees slightly bent, hands up to receive. */
    READY,
    /** Ball in both hands before the chest. */
    HOLD,
    /** One hand over the bouncing ball. */
    DRIBBLE,
    /** Arms go forward; phase 0 ball at the chest, 1 arms stretched. */
    PASS,
    /** Hands meet the ball; phase 0 stretched, 1 ball at the chest. */
    CATCH,
    /** Phase 0 ball at the chest, 0.5 leaves the floor, 1 ball released overhead. */
    SHOOT,
    /** One arm holds the ball out to a passing team-mate. */
    HAND_OFF,
    /** On a bench or chair. */
    SIT
}
