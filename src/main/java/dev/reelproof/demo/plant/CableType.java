package dev.reelproof.demo.plant;

import java.util.List;

/**
 * An invented product of the demo plant.
 *
 * @param product its code
 * @param description in words
 * @param limitSet what its reels are judged by
 * @param gauge AWG number of its conductors
 * @param insulatedMm diameter over the insulation in mm
 * @param permittivity effective relative permittivity of a pair
 * @param lossTangent effective loss tangent of a pair, jacket included
 * @param laysMm the lay of each pair in mm
 * @param coreTakeUp metres of pair per metre of core
 * @param topMegahertz upper end of its sweeps in MHz; 0 for a telephone cable
 * @param nearCoupling strength of the near-end coupling at 100 MHz
 * @param farCoupling strength of the far-end coupling at 100 MHz
 * @param scatter strength of the scatter in return loss at 100 MHz
 * @param jacketKgPerMetre mass of the jacket in kg per metre of cable
 * @param overallMm diameter over the jacket in mm
 * @param jacketMm thickness of the jacket in mm
 */
record CableType(
        String product,
        String description,
        String limitSet,
        int gauge,
        double insulatedMm,
        double permittivity,
        double lossTangent,
        List<Double> laysMm,
        double coreTakeUp,
        double topMegahertz,
        double nearCoupling,
        double farCoupling,
        double scatter,
        double jacketKgPerMetre,
        double overallMm,
        double jacketMm) {

    int pairs() {
        return laysMm.size();
    }

    boolean isTelephone() {
        return topMegahertz == 0;
    }
}
