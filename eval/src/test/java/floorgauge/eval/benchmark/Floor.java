package floorgauge.eval.benchmark;

import java.lang.annotation.Documented;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/** The least work that a benchmark's call has to do, counted by hand. */
@Documented
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.METHOD)
public @interface Floor {

    /** Multiplications, additions and comparisons that the result depends on. */
    double operations();

    /** Bytes that have to be read and written. */
    double bytes();

    /** Name of the parameter that operations and bytes are to be multiplied by; empty for none. */
    String scaledBy() default "";

    /** What one call does, in a few words. */
    String work();
}
