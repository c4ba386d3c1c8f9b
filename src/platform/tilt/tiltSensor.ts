/** Looks at the sensor, ms apart: a phone that lies still sends no event, and is to be seen lying still all the same. */
const everyMs = 50;

/** A sensor that has said nothing for so long is not there, ms: a browser without one has the event all the same. */
const patienceMs = 2000;

const degree = Math.PI / 180;

interface Tilt {
  readonly time: number;
  readonly alpha: number;
  readonly beta: number;
}

/** Some browsers ask the person, on a tap, before they tell how the machine lies. */
type Asking = typeof DeviceOrientationEvent & { readonly requestPermission?: () => Promise<PermissionState> };

/** How the machine lies, by the browser's own orientation events; angles in rad, time in s. */
export function createTiltSensor() {
  let end = (): void => {};

  return {
    /** Asks where the browser wants to be asked, then tells twenty times a second; null once the first came, or why none comes. */
    async start(tell: (tilt: Tilt) => void): Promise<'insecure' | 'missing' | 'refused' | null> {
      end();
      if (!window.isSecureContext) return 'insecure';
      if (!('DeviceOrientationEvent' in window)) return 'missing';
      if (!(await allowed())) return 'refused';
      return new Promise((resolve) => {
        let latest: Omit<Tilt, 'time'> | null = null;
        const hear = ({ alpha, beta }: DeviceOrientationEvent) => {
          if (beta === null) return;
          latest = { alpha: (alpha ?? 0) * degree, beta: beta * degree };
          resolve(null);
        };
        const timer = setInterval(() => latest && tell({ time: performance.now() / 1000, ...latest }), everyMs);
        window.addEventListener('deviceorientation', hear);
        const endThis = () => {
          clearInterval(timer);
          window.removeEventListener('deviceorientation', hear);
          resolve('missing');
        };
        setTimeout(() => latest === null && endThis(), patienceMs);
        end = endThis;
      });
    },
    stop: () => end(),
  };
}

async function allowed(): Promise<boolean> {
  const { requestPermission } = DeviceOrientationEvent as Asking;
  if (requestPermission === undefined) return true;
  try {
    return (await requestPermission.call(DeviceOrientationEvent)) === 'granted';
  } catch {
    return false;
  }
}
