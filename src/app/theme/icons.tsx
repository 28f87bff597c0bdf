/** Line drawings on an 18 × 18 field, our own. */
const paths = {
  lever: 'M1.5 7.5 16.5 3.5M9 6.2 5.5 14.5h7zM3.2 14.5h11.6',
  undo: 'M6.5 3 3 6.5 6.5 10M3 6.5h7.5a4 4 0 0 1 0 8H7',
  redo: 'M11.5 3 15 6.5 11.5 10M15 6.5H7.5a4 4 0 0 0 0 8H11',
  open: 'M2 14.5V4h5l1.5 2H15v2.5M2 14.5 4.5 8.5H17l-2.5 6z',
  save: 'M9 2v8.5M5.5 7.5 9 11l3.5-3.5M2.5 12.5v3h13v-3',
  find: 'M8 13A5 5 0 1 0 8 3a5 5 0 0 0 0 10zM11.7 11.7 16 16',
  menu: 'M2.5 5h13M2.5 9h13M2.5 13h13',
  contents: 'M3 3h12v12H3zM7 3v12',
  figure: 'M11.5 2.8a1.2 1.2 0 1 1 0 2.4 1.2 1.2 0 0 1 0-2.4M10.5 6 5 10.5l5.5 1L8 16h4',
  picture: 'M2.5 5h3.500l1.500-2h3l1.500 2h3.500v10h-13zM9 7.500a2.500 2.500 0 1 0 0 5 2.500 2.500 0 0 0 0-5',
  working: 'M2.5 5.5h5M2.5 9h3M2.5 12.5h5M10 13l2.5-8h4',
  guide: 'M9 4.5C7 3 4.5 3 2.5 3.5v11c2-.5 4.5-.5 6.5 1 2-1.5 4.5-1.5 6.5-1v-11C13.5 3 11 3 9 4.5zM9 4.5v11',
  doubts: 'M9 2.5 16.5 15.5h-15zM9 7.5v4M9 13.300v.2',
  gathered: 'M3 2.5h12v13H3zM6 6h6M6 9h6M6 12h3.5',
  worked: 'M3 2.5h12v13H3zM6 12.5l2-3.5 2 1.5 2.5-5',
  chart: 'M3 2.5v13h12.5M6 11.5v.1M8.5 8v.1M11 9.500v.1M13.500 5v.1',
  notes: 'M3 2.5h12v9l-4 4H3zM11 15.5v-4h4M6 6h6M6 9h3',
  named: 'M2.5 9 9 2.5h6.5V9L9 15.5zM12.300 5.700v.1',
  light:
    'M9 6a3 3 0 1 0 0 6 3 3 0 0 0 0-6zM9 1.5v2M9 14.5v2M1.5 9h2M14.5 9h2M3.700 3.700l1.400 1.400M12.900 12.900l1.400 1.400M3.700 14.300l1.400-1.400M12.900 5.100l1.400-1.400',
  dark: 'M14.5 11A6.5 6.5 0 0 1 7 3.5a6.5 6.5 0 1 0 7.5 7.5z',
  close: 'M4 4l10 10M14 4 4 14',
  more: 'M4 9h.1M9 9h.1M14 9h.1',
  down: 'M4.5 7 9 11.5 13.5 7',
  check: 'M3.5 9.5 7.5 13.5 14.5 4.5',
  filter: 'M2.5 4h13L10.5 10v5.5l-3-2V10z',
  plus: 'M9 3v12M3 9h12',
  column: 'M6 2.5h6v13H6zM6 6.5h6',
  cell: 'M2.5 6h13v6h-13z',
} as const;

export type IconName = keyof typeof paths;

export function Icon({ name }: { name: IconName }) {
  return (
    <svg class="icon" viewBox="0 0 18 18" aria-hidden="true">
      <path d={paths[name]} />
    </svg>
  );
}
