package floorgauge.events.screen;

import floorgauge.events.standards.Setting;

/** A part of a screen's quality. */
public enum QualityPart {
    CONTACT("contact", Setting.SCREEN_WEIGHT_CONTACT),
    SET("set", Setting.SCREEN_WEIGHT_SET),
    BASE("base", Setting.SCREEN_WEIGHT_BASE),
    ANGLE("angle", Setting.SCREEN_WEIGHT_ANGLE),
    BRUSH("brush", Setting.SCREEN_WEIGHT_BRUSH),
    EFFECT("effect", Setting.SCREEN_WEIGHT_EFFECT);

    private final String words;
    private final Setting weight;

    QualityPart(String words, Setting weight) {
        this.words = words;
        this.weight = weight;
    }

    public String words() {
        return words;
    }

    /** The setting that holds its weight. */
    public Setting weight() {
        return weight;
    }
}
