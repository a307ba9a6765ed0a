/** How to find out on a real engine what several kinds of part ask for alike. Common practice, no source. */
export const measuring = {
  holeDiameter: 'The largest drill shank that enters.',
  opens:
    'Degree disc on the shaft, engine turned the running way by hand. Blow through the port with your mouth: the angle ' +
    'at which the breath begins to go.',
  closes:
    'The angle at which the breath stops. To give it as a share of the stroke, measure how far the piston is from its ' +
    'dead centre just then.',
  clearance:
    'Half of: bore less rod, the rod by micrometer, the bore by gauge pins or the largest drill shank that enters. Or ' +
    'the fit, or how the two were finished.',
  driveTorque:
    'Cord on the flywheel rim, rod uncoupled: the torque that keeps the shaft turning with the gear, less that without ' +
    'it; a mean over the turn.',
  faceFriction:
    'Lay the oiled part on its face and tilt until it slides: the tangent of that angle. Break-away is what counts, so ' +
    'let it rest a minute first.',
  dischargeCoefficient:
    'Not with a rule. Take 0.65 for drilled edges as they come, 0.75 for edges with the burr carefully broken.',
} as const;
